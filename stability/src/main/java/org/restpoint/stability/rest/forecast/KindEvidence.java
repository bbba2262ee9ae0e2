package org.restpoint.stability.rest.forecast;

import java.util.List;
import org.restpoint.stability.rest.forecast.KindTimes.Normal;

/**
 * What one reading says of each kind of curve, beside what was known of the kind's times. What was
 * known is taken out of what is known now: the rest is what the reading alone has told.
 */
final class KindEvidence {

  /** Keeps every curve of a kind possible, however far it is from what was learnt. */
  private static final double LEAST = 1e-12;

  private final double[] evidence = new double[CurveKinds.COUNT];
  private final double[] precision = new double[CurveKinds.COUNT];
  private final double[] told = new double[CurveKinds.COUNT];
  private final double[] uninformed = new double[CurveKinds.COUNT];
  private double largest;

  /**
   * Weighs a reading.
   *
   * @param known what is known of each kind
   * @param likelihood of each curve, up to a factor
   */
  KindEvidence(List<KindTimes> known, boolean rising, double level, double[] likelihood) {
    double[] expected = curves(known, rising, level);
    double[] prior = Candidates.uninformed();
    Moments before = new Moments();
    Moments after = new Moments();
    for (int i = 0; i < expected.length; i++) {
      before.add(i, expected[i]);
      after.add(i, expected[i] * likelihood[i]);
      uninformed[CurveKinds.of(i)] += prior[i] * likelihood[i];
    }
    for (int kind = 0; kind < CurveKinds.COUNT; kind++) {
      evidence[kind] = after.weight[kind];
      largest = Math.max(largest, evidence[kind]);
      if (evidence[kind] > 0) {
        double now = 1 / after.variance(kind);
        double knownBefore = 1 / before.variance(kind);
        precision[kind] = now - knownBefore;
        told[kind] =
            (after.mean(kind) * now - before.mean(kind) * knownBefore) / precision[kind]
                + CurveKinds.middle(kind);
      }
    }
  }

  /** Mean and variance of ln τ of each kind's curves, weighed; means from the middle of the row. */
  private static final class Moments {

    private final double[] weight = new double[CurveKinds.COUNT];
    private final double[] sum = new double[CurveKinds.COUNT];
    private final double[] square = new double[CurveKinds.COUNT];

    void add(int curve, double share) {
      int kind = CurveKinds.of(curve);
      double lnSeconds = CurveKinds.lnSeconds(curve) - CurveKinds.middle(kind);
      weight[kind] += share;
      sum[kind] += share * lnSeconds;
      square[kind] += share * lnSeconds * lnSeconds;
    }

    double mean(int kind) {
      return sum[kind] / weight[kind];
    }

    double variance(int kind) {
      double spread = square[kind] / weight[kind] - mean(kind) * mean(kind);
      return Math.max(0, spread) + CurveKinds.roundingVariance(kind);
    }
  }

  /** How likely each curve is within its kind; all of a kind add up to 1. */
  static double[] curves(List<KindTimes> known, boolean rising, double level) {
    double[] curves = new double[Candidates.COUNT];
    double[] sums = new double[CurveKinds.COUNT];
    Normal[] times = new Normal[CurveKinds.COUNT];
    for (int kind = 0; kind < times.length; kind++) {
      times[kind] = known.get(kind).at(kind, rising, level);
    }
    for (int i = 0; i < curves.length; i++) {
      int kind = CurveKinds.of(i);
      curves[i] = times[kind].at(CurveKinds.lnSeconds(i)) + LEAST;
      sums[kind] += curves[i];
    }
    for (int i = 0; i < curves.length; i++) {
      curves[i] /= sums[CurveKinds.of(i)];
    }
    return curves;
  }

  /** Evidence of the reading for a kind, up to a factor common to all. */
  double of(int kind) {
    return evidence[kind];
  }

  /** The largest of them. */
  double largest() {
    return largest;
  }

  /**
   * How well the reading alone tells the kind's ln τ: 1/variance; not above 0 where it does not.
   */
  double precision(int kind) {
    return precision[kind];
  }

  /** What the reading alone tells of the kind's ln τ; only for a {@link #precision} above 0. */
  Normal told(int kind) {
    return new Normal(told[kind], 1 / precision[kind]);
  }

  /**
   * How likely the reading is one that what was learnt foresees, rather than an odd one.
   *
   * @param shares how likely each kind was
   * @param odd how likely an odd reading was
   */
  double share(double[] shares, double odd) {
    double learnt = 0;
    double unknown = 0;
    for (int kind = 0; kind < CurveKinds.COUNT; kind++) {
      learnt += (1 - odd) * shares[kind] * evidence[kind];
      unknown += odd * uninformed[kind];
    }
    return learnt / (learnt + unknown);
  }
}
