package org.restpoint.stability.settle1;

import java.util.ArrayList;
import java.util.List;

/**
 * How soon and how rightly a rule decided on some curves. An error is the published potential less
 * the truth at the decision.
 *
 * <p>Quantiles are by nearest rank: the ⌈p·n⌉-th smallest. Edge results: when none settled, bias
 * and root mean square are 0 of 0 and {@code errors()} is 0; look at {@code never()} first.
 *
 * @param curves number of curves
 * @param never share of all that never settled
 * @param overOneMillivolt share of all that settled with |error| > 1 mV: false settles
 * @param overHalfMillivolt the same with |error| > 0.5 mV
 * @param bias mean error of the settled, in mV
 * @param rootMeanSquare root of the mean squared error of the settled, in mV
 * @param error95 95th percentile of |error| of the settled, in mV
 * @param within2u share of the settled whose |error| is within twice the uncertainty published
 * @param meanSeconds mean time to the decision, never settled as {@value Settle1#SECONDS} s
 * @param medianSeconds the median of it
 * @param seconds95 the 95th percentile of it
 */
public record Scores(
    int curves,
    double never,
    double overOneMillivolt,
    double overHalfMillivolt,
    double bias,
    double rootMeanSquare,
    double error95,
    double within2u,
    double meanSeconds,
    double medianSeconds,
    double seconds95) {

  /** Above this a settle is false, in mV: about 4 % of the concentration. */
  public static final double FALSE_MILLIVOLTS = 1;

  /** The stricter limit of a false settle, in mV: about 2 %. */
  public static final double STRICTLY_FALSE_MILLIVOLTS = 0.5;

  /** Runs a rule over some curves. */
  public static Scores of(Candidate candidate, List<Curve> curves) {
    return of(candidate.decide(curves));
  }

  /** Sums up decisions, one at least. */
  public static Scores of(List<Decision> decisions) {
    if (decisions.isEmpty()) {
      throw new IllegalArgumentException("scores are of one decision at least");
    }
    List<Double> times = new ArrayList<>();
    List<Double> errors = new ArrayList<>();
    int within = 0;
    for (Decision decision : decisions) {
      times.add(decision.seconds());
      if (decision instanceof Decision.Settled settled) {
        errors.add(settled.errorMillivolts());
        if (Math.abs(settled.errorMillivolts()) <= 2 * settled.standardUncertaintyMillivolts()) {
          within++;
        }
      }
    }
    List<Double> sizes = errors.stream().map(Math::abs).sorted().toList();
    List<Double> sorted = times.stream().sorted().toList();
    int n = decisions.size();
    return new Scores(
        n,
        (n - errors.size()) / (double) n,
        above(sizes, FALSE_MILLIVOLTS) / (double) n,
        above(sizes, STRICTLY_FALSE_MILLIVOLTS) / (double) n,
        mean(errors),
        Math.sqrt(mean(errors.stream().map(e -> e * e).toList())),
        quantile(sizes, 0.95),
        within / (double) Math.max(1, errors.size()),
        mean(times),
        quantile(sorted, 0.5),
        quantile(sorted, 0.95));
  }

  private static int above(List<Double> values, double limit) {
    int above = 0;
    for (double value : values) {
      if (value > limit) {
        above++;
      }
    }
    return above;
  }

  private static double mean(List<Double> values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum / Math.max(1, values.size());
  }

  private static double quantile(List<Double> sorted, double p) {
    if (sorted.isEmpty()) {
      return 0;
    }
    return sorted.get((int) Math.ceil(p * sorted.size()) - 1);
  }
}
