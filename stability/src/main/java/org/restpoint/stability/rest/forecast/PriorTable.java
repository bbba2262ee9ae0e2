package org.restpoint.stability.rest.forecast;

import java.util.List;

/** A {@link ResponsePrior} at hand for every fit. */
final class PriorTable {

  private final double[] limits;
  private final double[][] rising;
  private final double[][] falling;
  private final double unforeseen;
  private double origin;

  PriorTable(ResponsePrior prior) {
    this.unforeseen = prior.unforeseen();
    int levels = prior.levels().size();
    this.limits = new double[levels];
    this.rising = new double[levels][];
    this.falling = new double[levels][];
    for (int i = 0; i < levels; i++) {
      ResponsePrior.Level level = prior.levels().get(i);
      limits[i] = level.upToMillivolts();
      rising[i] = shares(level.rising());
      falling[i] = level.falling().equals(level.rising()) ? rising[i] : shares(level.falling());
    }
  }

  private static double[] shares(List<Double> weights) {
    double sum = 0;
    for (double weight : weights) {
      sum += weight;
    }
    double[] shares = new double[weights.size()];
    for (int i = 0; i < shares.length; i++) {
      shares[i] = weights.get(i) / sum;
    }
    return shares;
  }

  /** The part of the way still to go that may be foreseen wrong. */
  double unforeseen() {
    return unforeseen;
  }

  /** Where the readings began, in mV. */
  void beginAt(double millivolts) {
    origin = millivolts;
  }

  /**
   * How likely a curve was before any reading, of all 1.
   *
   * @param curve its place in {@link Candidates}
   * @param restMillivolts where it says that the potential comes to rest, since the first reading
   */
  double of(int curve, double restMillivolts) {
    int level = 0;
    while (level < limits.length - 1 && origin + restMillivolts > limits[level]) {
      level++;
    }
    return restMillivolts > 0 ? rising[level][curve] : falling[level][curve];
  }
}
