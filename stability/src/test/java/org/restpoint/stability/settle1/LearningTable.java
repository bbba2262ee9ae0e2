package org.restpoint.stability.settle1;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.restpoint.stability.rest.ForecastDetector;
import org.restpoint.stability.rest.ForecastRule;
import org.restpoint.stability.rest.forecast.ResponseHistory;
import org.restpoint.stability.rest.forecast.ResponsePrior;

/**
 * The forecast rule over many {@link OneElectrode}s, reading by reading, with and without learning.
 *
 * @param without decisions by electrode and reading, nothing known before any
 * @param with the same, each reading with what those before it have taught
 * @param changes how often an electrode was taken for changed
 */
record LearningTable(List<List<Decision>> without, List<List<Decision>> with, long changes) {

  /** Readings an electrode has. */
  static final int READINGS = 40;

  /** After which of them it gets a new membrane, where it does. */
  static final int NEW_MEMBRANE = 20;

  private static final int ELECTRODES = 150;
  private static final long FIRST_SEED = 20260901;
  private static final long FIRST_SEED_OF_CHANGES = 20261001;
  private static final ForecastRule RULE = new ForecastRule(1);

  /** The decisions on one electrode, with learning, and what was learnt. */
  record Taught(List<Decision> decisions, ResponseHistory history) {}

  /** Electrodes of consecutive seeds; a new membrane after so many readings, or never. */
  static LearningTable of(long firstSeed, int electrodes, int newMembraneAfter) {
    List<List<Decision>> without = new ArrayList<>();
    List<List<Decision>> with = new ArrayList<>();
    long changes = 0;
    for (Pair pair :
        LongStream.range(firstSeed, firstSeed + electrodes)
            .parallel()
            .mapToObj(seed -> pair(OneElectrode.readings(seed, READINGS, newMembraneAfter)))
            .toList()) {
      without.add(pair.without());
      with.add(pair.with().decisions());
      changes += pair.with().history().changes();
    }
    return new LearningTable(without, with, changes);
  }

  private record Pair(List<Decision> without, Taught with) {}

  private static Pair pair(List<Curve> readings) {
    return new Pair(untaught(readings), taught(readings));
  }

  static List<Decision> untaught(List<Curve> readings) {
    return readings.stream().map(curve -> decide(detector(curve, unknown()), curve)).toList();
  }

  static Taught taught(List<Curve> readings) {
    ResponseHistory history = ResponseHistory.empty();
    List<Decision> decisions = new ArrayList<>();
    for (Curve curve : readings) {
      ForecastDetector detector = detector(curve, history.prior());
      decisions.add(decide(detector, curve));
      history = detector.response().map(history::with).orElse(history);
    }
    return new Taught(decisions, history);
  }

  private static ResponsePrior unknown() {
    return ResponsePrior.uninformed();
  }

  private static ForecastDetector detector(Curve curve, ResponsePrior prior) {
    return RULE.detector(curve.slopeMillivoltsPerDecade(), prior);
  }

  private static Decision decide(ForecastDetector detector, Curve curve) {
    return new Candidate(RULE.describe(), slope -> detector).decide(curve);
  }

  /** Scores of readings from … to, counted from 1. */
  static Scores scores(List<List<Decision>> decisions, int from, int to) {
    return Scores.of(decisions.stream().flatMap(it -> it.subList(from - 1, to).stream()).toList());
  }

  /** Both tables: the same electrode for 40 readings, and a new membrane after 20. */
  static String markdown() {
    Markdown text = new Markdown();
    text.heading("With what an electrode's earlier readings have taught")
        .paragraph(
            RULE.describe()
                + " over "
                + ELECTRODES
                + " electrodes of "
                + READINGS
                + " readings each, without learning → with it.");
    int[] ends = {1, 5, 15, 30, READINGS};
    of(FIRST_SEED, ELECTRODES, READINGS).table(text, ends);
    text.paragraph("A new membrane after reading " + NEW_MEMBRANE + ":");
    int[] endsOfChanges = {5, NEW_MEMBRANE, 21, 22, 23, 25, 30, READINGS};
    of(FIRST_SEED_OF_CHANGES, ELECTRODES, NEW_MEMBRANE).table(text, endsOfChanges);
    return text.toString();
  }

  private void table(Markdown text, int... ends) {
    List<List<String>> rows = new ArrayList<>();
    int from = 1;
    for (int to : ends) {
      Scores plain = scores(without, from, to);
      Scores learnt = scores(with, from, to);
      rows.add(
          List.of(
              from == to ? String.valueOf(to) : from + " to " + to,
              both(plain.meanSeconds(), learnt.meanSeconds(), 1),
              both(plain.medianSeconds(), learnt.medianSeconds(), 0),
              both(100 * plain.overOneMillivolt(), 100 * learnt.overOneMillivolt(), 2),
              both(plain.rootMeanSquare(), learnt.rootMeanSquare(), 2),
              both(100 * plain.never(), 100 * learnt.never(), 2),
              Spread.number(plain.meanSeconds() / learnt.meanSeconds(), 2)));
      from = to + 1;
    }
    text.table(
        1,
        List.of(
            "reading",
            "mean, s",
            "median, s",
            "> 1 mV, %",
            "RMSE, mV",
            "never, %",
            "times sooner in the mean"),
        rows);
    text.paragraph("Electrodes taken for changed: " + changes + " times.");
  }

  private static String both(double plain, double learnt, int decimals) {
    return Spread.number(plain, decimals) + " → " + Spread.number(learnt, decimals);
  }
}
