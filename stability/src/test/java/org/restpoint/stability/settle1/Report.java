package org.restpoint.stability.settle1;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A run in tables: no time without the errors that were paid for it. */
final class Report {

  private final Run run;
  private final List<EqualError> equalErrors;

  Report(Run run) {
    this.run = run;
    this.equalErrors = run.equalErrors();
  }

  String markdown() {
    Markdown text = new Markdown();
    int curves = run.sets().reports().get(0).size();
    text.heading("How soon and how rightly")
        .paragraph(
            "Sets of "
                + curves
                + " curves; means ± standard deviations over the seeds "
                + run.sets().seeds()
                + ". A false settle is one with an error above 1 mV; shares are of all curves,"
                + " bias, RMSE and the 95 % error of the settled; never settled counts as "
                + Settle1.SECONDS
                + " s. 2u is twice the standard uncertainty that the rule publishes.")
        .table(1, joined(List.of("rule"), Column.titles()), summary());
    text.heading("Settings chosen on the tuning set").table(3, chosenTitles(), chosen());
    text.heading("At equal error")
        .paragraph(
            "Each candidate beside the soonest setting of a family, on the same curves, that makes"
                + " no more false settles and gives up on 10 % of them at most. Where none makes so"
                + " few, the one that makes the fewest stands there, and its errors are larger"
                + " than the candidate's.")
        .table(4, equalTitles(), equal())
        .table(2, List.of("candidate", "beside", "times sooner", "as few false"), sooner());
    text.heading("By model, all seeds together")
        .table(2, joined(List.of("rule", "model"), Column.titles()), byModel());
    text.heading("By seed").table(2, joined(List.of("rule", "seed"), Column.titles()), bySeed());
    return text.toString();
  }

  private List<List<String>> summary() {
    return run.rows().stream()
        .map(row -> joined(List.of(row.candidate().name()), Column.spreads(row.scores())))
        .toList();
  }

  private static List<String> chosenTitles() {
    return List.of("family", "aim", "setting", "mean, s", "> 1 mV, %", "RMSE, mV");
  }

  private List<List<String>> chosen() {
    List<List<String>> rows = new ArrayList<>();
    for (Run.Tuned tuned : run.tuned()) {
      List<String> named = List.of(tuned.family(), tuned.aim().words());
      if (tuned.row().isEmpty()) {
        rows.add(joined(named, List.of("no setting reaches it", "", "", "")));
      } else {
        Candidate candidate = tuned.row().get().candidate();
        Scores scores = Scores.of(candidate, run.sets().tuning());
        rows.add(joined(named, joined(List.of(candidate.name()), brief(scores))));
      }
    }
    return rows;
  }

  private static List<String> brief(Scores scores) {
    return List.of(
        Spread.number(scores.meanSeconds(), 1),
        Spread.number(100 * scores.overOneMillivolt(), 2),
        Spread.number(scores.rootMeanSquare(), 2));
  }

  private static List<String> equalTitles() {
    return List.of(
        "candidate",
        "beside",
        "its setting",
        "as few false",
        "mean, s",
        "> 1 mV, %",
        "RMSE, mV",
        "its mean, s",
        "its > 1 mV, %",
        "its RMSE, mV",
        "times sooner");
  }

  private List<List<String>> equal() {
    List<List<String>> rows = new ArrayList<>();
    for (EqualError equal : equalErrors) {
      List<String> cells = new ArrayList<>();
      cells.addAll(
          List.of(equal.candidate(), equal.family(), equal.setting(), yes(equal.reached())));
      cells.addAll(brief(equal.scores()));
      cells.addAll(brief(equal.settingScores()));
      cells.add(Spread.number(equal.timesSooner(), 2));
      rows.add(cells);
    }
    return rows;
  }

  private List<List<String>> sooner() {
    Map<List<String>, List<EqualError>> pairs = new LinkedHashMap<>();
    for (EqualError equal : equalErrors) {
      pairs
          .computeIfAbsent(List.of(equal.candidate(), equal.family()), it -> new ArrayList<>())
          .add(equal);
    }
    return pairs.entrySet().stream()
        .map(pair -> joined(pair.getKey(), sooner(pair.getValue())))
        .toList();
  }

  private static List<String> sooner(List<EqualError> seeds) {
    long reached = seeds.stream().filter(EqualError::reached).count();
    Spread times = Spread.of(seeds.stream().map(EqualError::timesSooner).toList());
    return List.of(times.words(2), "on " + reached + " of " + seeds.size() + " seeds");
  }

  private List<List<String>> byModel() {
    List<List<String>> rows = new ArrayList<>();
    for (Row row : run.rows()) {
      for (Model model : Model.values()) {
        List<String> named = List.of(row.candidate().name(), model.words());
        rows.add(joined(named, Column.of(row.of(model, run.sets()))));
      }
    }
    return rows;
  }

  private List<List<String>> bySeed() {
    List<List<String>> rows = new ArrayList<>();
    for (Row row : run.rows()) {
      List<Scores> scores = row.scores();
      for (int i = 0; i < scores.size(); i++) {
        List<String> named =
            List.of(row.candidate().name(), String.valueOf(run.sets().seeds().get(i)));
        rows.add(joined(named, Column.of(scores.get(i))));
      }
    }
    return rows;
  }

  private static String yes(boolean reached) {
    return reached ? "yes" : "no, the fewest it makes";
  }

  private static List<String> joined(Collection<String> first, Collection<String> then) {
    List<String> all = new ArrayList<>(first);
    all.addAll(then);
    return all;
  }
}
