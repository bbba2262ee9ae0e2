package org.restpoint.stability.rest.forecast;

import java.util.List;

/** A {@link ResponsePrior} as logarithms, at hand for every fit. */
final class PriorTable {

  private final double[] limits;
  private final double[][] rising;
  private final double[][] falling;
  private double origin;

  PriorTable(ResponsePrior prior) {
    int levels = prior.levels().size();
    this.limits = new double[levels];
    this.rising = new double[levels][];
    this.falling = new double[levels][];
    for (int i = 0; i < levels; i++) {
      ResponsePrior.Level level = prior.levels().get(i);
      limits[i] = level.upToMillivolts();
      rising[i] = logs(level.rising());
      falling[i] = logs(level.falling());
    }
  }

  private static double[] logs(List<Double> weights) {
    double sum = 0;
    for (double weight : weights) {
      sum += weight;
    }
    double[] logs = new double[weights.size()];
    for (int i = 0; i < logs.length; i++) {
      logs[i] = Math.log(weights.get(i) / sum);
    }
    return logs;
  }

  /** Where the readings began, in mV. */
  void beginAt(double millivolts) {
    origin = millivolts;
  }

  /**
   * The logarithm of how likely a curve was before any reading.
   *
   * @param curve its place in {@link Candidates}
   * @param restMillivolts where it says that the potential comes to rest, since the first reading
   */
  double log(int curve, double restMillivolts) {
    int level = 0;
    while (level < limits.length - 1 && origin + restMillivolts > limits[level]) {
      level++;
    }
    return restMillivolts > 0 ? rising[level][curve] : falling[level][curve];
  }
}
