package org.restpoint.stability.control;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.restpoint.stability.calibration.Reason;

/**
 * Phase I: the base is not complete.
 *
 * @param baseNeeded how many values make the base
 * @param rules the patterns to look for afterwards
 * @param base the values so far, oldest first, at most {@code baseNeeded}
 */
public record Gathering(int baseNeeded, Set<RunRule> rules, List<Double> base)
    implements ControlChart {

  /** 20, common practice: σ̂ is then known within 21 % (k = 1). */
  public static final int USUAL_BASE = 20;

  /** Our choice: below 8, σ̂ is not known within a third, and the limits mean little. */
  public static final int LEAST_BASE = 8;

  /** Our choice, to keep the state bounded: more makes σ̂ hardly better. */
  public static final int LARGEST_BASE = 200;

  public Gathering {
    if (baseNeeded < LEAST_BASE || baseNeeded > LARGEST_BASE) {
      throw new IllegalArgumentException(
          "a base has " + LEAST_BASE + " to " + LARGEST_BASE + " values, not " + baseNeeded);
    }
    rules = Set.copyOf(rules);
    base = List.copyOf(base);
    if (base.size() > baseNeeded) {
      throw new IllegalArgumentException("more values gathered than the base needs");
    }
  }

  @Override
  public ControlChart accept(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a chart takes finite values, not " + value);
    }
    List<Double> next = new ArrayList<>(base);
    if (next.size() == baseNeeded) {
      next.remove(0);
    }
    next.add(value);
    if (next.size() == baseNeeded) {
      ControlLimits limits = ControlLimits.of(next);
      if (limits.spreads()) {
        return Watching.after(next, limits, rules);
      }
    }
    return new Gathering(baseNeeded, rules, next);
  }

  @Override
  public Optional<ControlLimits> limits() {
    return Optional.empty();
  }

  @Override
  public List<Signal> signals() {
    return List.of();
  }

  @Override
  public Optional<Reason> withoutLimits() {
    if (base.size() == baseNeeded) {
      return Optional.of(
          new Reason(
              "control-no-spread",
              String.format(
                  Locale.ROOT,
                  "the last %d values are all %.6g, so no limits can be drawn",
                  base.size(),
                  base.get(0)),
              "Record the figure with more digits."));
    }
    return Optional.of(
        new Reason(
            "control-not-enough-history",
            String.format(
                Locale.ROOT,
                "%d of %d values are there that the limits are drawn from",
                base.size(),
                baseNeeded),
            "Go on checking while nothing is wrong; until then the fixed limits of the check"
                + " itself hold."));
  }
}
