package org.restpoint.stability.settle1;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One run of the benchmark: families swept, settings chosen, rules run.
 *
 * @param sets the curves
 * @param lines the families as they are drawn
 * @param families the families as they are compared with
 * @param tuned the settings chosen on the tuning set, run on the sets that are reported
 * @param fixed the settings that need no choice
 * @param candidates the rules that claim to be sooner
 */
record Run(
    Sets sets,
    List<Family> lines,
    List<Family> families,
    List<Tuned> tuned,
    List<Row> fixed,
    List<Row> candidates) {

  /**
   * A setting chosen on the tuning set; no row when the family has none that meets the aim.
   *
   * @param family the family's name
   * @param aim what it was chosen for
   * @param row what it made of the sets that are reported
   */
  record Tuned(String family, Aim aim, Optional<Row> row) {}

  static Run of(Sets sets, List<Candidate> fixed, List<Candidate> candidates) {
    Family raw = Family.sweep("consecutive", ConsecutiveSweep::raw, sets);
    Family medians =
        Family.sweep("consecutive, medians of 3", ConsecutiveSweep::onMediansOfThree, sets);
    Family drift = Family.sweep("drift", DriftSweep::raw, sets);
    List<Family> families = List.of(raw.and(medians, "consecutive"), drift);
    List<Tuned> tuned = new ArrayList<>();
    for (Family family : families) {
      Envelope envelope = new Envelope(family.tuning());
      for (Aim aim : Aim.ALL) {
        Optional<Swept> chosen = aim.choose(envelope);
        tuned.add(new Tuned(family.name(), aim, chosen.map(it -> Row.of(it.candidate(), sets))));
      }
    }
    return new Run(
        sets,
        List.of(raw, medians, drift),
        families,
        tuned,
        fixed.stream().map(it -> Row.of(it, sets)).toList(),
        candidates.stream().map(it -> Row.of(it, sets)).toList());
  }

  /** Every rule that was run, each once. */
  List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    Stream<Row> chosen = tuned.stream().flatMap(it -> it.row().stream());
    Stream.of(candidates.stream(), chosen, fixed.stream())
        .flatMap(it -> it)
        .filter(row -> rows.stream().noneMatch(seen -> named(seen).equals(named(row))))
        .forEach(rows::add);
    return rows;
  }

  private static String named(Row row) {
    return row.candidate().name();
  }

  /** Each candidate beside each family on each set. */
  List<EqualError> equalErrors() {
    List<EqualError> found = new ArrayList<>();
    for (Row row : candidates) {
      for (Family family : families) {
        for (int set = 0; set < sets.reports().size(); set++) {
          EqualError.of(row, family, set, sets).ifPresent(found::add);
        }
      }
    }
    return found;
  }
}
