package org.restpoint.stability.settle1;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The lower envelope of a family of rules: the shortest mean time any of its settings reaches with
 * no more than a share of false settles. Settings that never settle on more than 10 % of the curves
 * do not count. It is a staircase and not a line through settings: between two of them there is
 * none to choose.
 */
public final class Envelope {

  /** A rule that gives up more often than that is of no use, however right it is. */
  public static final double MOST_NEVER = 0.10;

  private static final Comparator<Swept> BY_ERROR =
      Comparator.comparingDouble(Swept::overOneMillivolt).thenComparingDouble(Swept::meanSeconds);

  private final List<Swept> steps;

  /** Of all settings of a family. */
  public Envelope(List<Swept> settings) {
    steps = new ArrayList<>();
    double shortest = Double.POSITIVE_INFINITY;
    for (Swept setting : settings.stream().sorted(BY_ERROR).toList()) {
      if (setting.never() <= MOST_NEVER && setting.meanSeconds() < shortest) {
        shortest = setting.meanSeconds();
        steps.add(setting);
      }
    }
  }

  /** The settings on it, by rising false settles and falling time. */
  public List<Swept> steps() {
    return List.copyOf(steps);
  }

  /**
   * The soonest setting with so many false settles at most; empty when none has so few.
   *
   * @param falseSettles share with |error| > 1 mV, 0 to 1
   */
  public Optional<Swept> at(double falseSettles) {
    Optional<Swept> best = Optional.empty();
    for (Swept step : steps) {
      if (step.overOneMillivolt() <= falseSettles) {
        best = Optional.of(step);
      }
    }
    return best;
  }

  /** The setting with the fewest false settles; empty when none settles on enough curves. */
  public Optional<Swept> fewestFalse() {
    return steps.stream().findFirst();
  }
}
