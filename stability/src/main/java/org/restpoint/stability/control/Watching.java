package org.restpoint.stability.control;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.restpoint.stability.calibration.Reason;

/**
 * Phase II: limits fixed from the base, and each value held against them.
 *
 * <p>The last values of the base stand at the beginning of the window, since the process goes on.
 * Values of the base that lie beyond the limits drawn from it are named in {@code doubtfulBase},
 * not dropped: if something was wrong when they were taken, begin the chart anew without them.
 *
 * @param fixed the limits
 * @param rules the patterns to look for
 * @param doubtfulBase the values of the base beyond its own 3σ limits
 * @param recent the last values, oldest first, at most {@link #WINDOW}
 * @param signals what the newest value completed, in the order of the rules
 */
public record Watching(
    ControlLimits fixed,
    Set<RunRule> rules,
    List<Double> doubtfulBase,
    List<Double> recent,
    List<Signal> signals)
    implements ControlChart {

  /** The longest pattern of any rule. */
  public static final int WINDOW = 15;

  private static final RunRule[] IN_ORDER = RunRule.values();

  public Watching {
    if (!fixed.spreads()) {
      throw new IllegalArgumentException("limits of a base that does not spread watch nothing");
    }
    rules = Set.copyOf(rules);
    doubtfulBase = List.copyOf(doubtfulBase);
    recent = List.copyOf(recent);
    signals = List.copyOf(signals);
    if (recent.size() > WINDOW) {
      throw new IllegalArgumentException("more recent values than the longest rule looks at");
    }
  }

  static Watching after(List<Double> base, ControlLimits limits, Set<RunRule> rules) {
    List<Double> doubtful =
        base.stream().filter(x -> Math.abs(limits.sigmasFromMean(x)) > 3).toList();
    List<Double> last = base.subList(Math.max(0, base.size() - WINDOW), base.size());
    return new Watching(limits, rules, doubtful, last, List.of());
  }

  @Override
  public Watching accept(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a chart takes finite values, not " + value);
    }
    List<Double> window = new ArrayList<>(WINDOW);
    window.addAll(recent.size() < WINDOW ? recent : recent.subList(1, WINDOW));
    window.add(value);
    double[] values = window.stream().mapToDouble(Double::doubleValue).toArray();
    List<Signal> seen = new ArrayList<>();
    for (RunRule rule : IN_ORDER) {
      if (rules.contains(rule) && rule.completedBy(values, fixed)) {
        int from = Math.max(0, window.size() - rule.window());
        seen.add(Signal.seen(rule, window.subList(from, window.size()), fixed));
      }
    }
    return new Watching(fixed, rules, doubtfulBase, window, seen);
  }

  @Override
  public Optional<ControlLimits> limits() {
    return Optional.of(fixed);
  }

  @Override
  public Optional<Reason> withoutLimits() {
    return Optional.empty();
  }
}
