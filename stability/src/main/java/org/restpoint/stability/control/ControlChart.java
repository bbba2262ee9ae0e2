package org.restpoint.stability.control;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.restpoint.stability.calibration.Reason;

/**
 * An individuals chart: first it gathers a base (phase I), then it watches each value against
 * limits that stay fixed (phase II). A value: {@code chart = chart.accept(x)}; its components are
 * all there is to write out and take up again.
 *
 * <p>What to do about a signal is the business of whoever knows what is charted. What is charted
 * has to be independent and about normally distributed for the rules to be as rare as they are said
 * to be: the recovery of one check standard a day is, readings a second apart are not.
 *
 * <p>Edge results: a value that is not finite is refused with an {@link IllegalArgumentException};
 * a base that does not spread gives no limits, and the chart goes on gathering over the newest
 * values.
 */
public sealed interface ControlChart permits Gathering, Watching {

  /** The chart with one more value. */
  ControlChart accept(double value);

  /** The limits in force; empty while the base is gathered. */
  Optional<ControlLimits> limits();

  /** What the newest value completed; empty while the base is gathered. */
  List<Signal> signals();

  /** Why there are no limits yet, and what to do; empty where there are. */
  Optional<Reason> withoutLimits();

  /**
   * A new chart.
   *
   * @param baseNeeded how many values make the base, {@link Gathering#LEAST_BASE} to {@link
   *     Gathering#LARGEST_BASE}
   * @param rules the patterns to look for
   */
  static ControlChart begin(int baseNeeded, Set<RunRule> rules) {
    return new Gathering(baseNeeded, rules, List.of());
  }
}
