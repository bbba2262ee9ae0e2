package org.restpoint.stability.settle1;

import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * What a sweep saw of one setting; shares and figures as in {@link Scores}.
 *
 * @param candidate the setting, ready to be run by the rule itself
 * @param never share never settled
 * @param overOneMillivolt share of false settles
 * @param overHalfMillivolt the same with the stricter limit
 * @param bias mean error, in mV
 * @param rootMeanSquare in mV
 * @param meanSeconds mean time to the decision
 */
public record Swept(
    Candidate candidate,
    double never,
    double overOneMillivolt,
    double overHalfMillivolt,
    double bias,
    double rootMeanSquare,
    double meanSeconds) {

  /** The mean of one setting's figures on several sets of curves. */
  static Swept mean(List<Swept> sets) {
    return new Swept(
        sets.get(0).candidate(),
        mean(sets, Swept::never),
        mean(sets, Swept::overOneMillivolt),
        mean(sets, Swept::overHalfMillivolt),
        mean(sets, Swept::bias),
        mean(sets, Swept::rootMeanSquare),
        mean(sets, Swept::meanSeconds));
  }

  private static double mean(List<Swept> sets, ToDoubleFunction<Swept> figure) {
    return sets.stream().mapToDouble(figure).sum() / sets.size();
  }
}
