package org.restpoint.stability.control;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;

/**
 * A pattern that a process in control shows seldom. Each looks at the last values, of which the
 * newest is always a part: a rule signals at the value that completes its pattern and as long as
 * the pattern goes on. "Beyond" is strictly beyond; a value on the mean is on neither side.
 *
 * <p>Reference: Western Electric Co., Statistical Quality Control Handbook, 1956; L. S. Nelson, The
 * Shewhart control chart: tests for special causes, J. Quality Technology 16 (1984) 237.
 */
public enum RunRule {
  /** One value beyond 3σ (Western Electric 1, Nelson 1). */
  BEYOND_THREE_SIGMA(1, "the value lies more than 3σ from the mean"),
  /** Two of three values beyond 2σ on the same side (Western Electric 2, Nelson 5). */
  TWO_OF_THREE_BEYOND_TWO_SIGMA(
      3, "two of the last three values lie more than 2σ from the mean, on the same side"),
  /** Four of five values beyond 1σ on the same side (Western Electric 3, Nelson 6). */
  FOUR_OF_FIVE_BEYOND_ONE_SIGMA(
      5, "four of the last five values lie more than 1σ from the mean, on the same side"),
  /** Eight values in a row on one side (Western Electric 4). */
  EIGHT_ON_ONE_SIDE(8, "the last eight values lie on one side of the mean"),
  /** Nine values in a row on one side (Nelson 2). */
  NINE_ON_ONE_SIDE(9, "the last nine values lie on one side of the mean"),
  /** Six values in a row, each above the one before, or each below it (Nelson 3). */
  SIX_RISING_OR_FALLING(6, "the last six values go steadily one way"),
  /** Fourteen values in a row going up and down by turns (Nelson 4). */
  FOURTEEN_ALTERNATING(14, "the last fourteen values go up and down by turns"),
  /** Fifteen values in a row within 1σ, on both sides (Nelson 7). */
  FIFTEEN_WITHIN_ONE_SIGMA(
      15, "the last fifteen values lie within 1σ of the mean: the limits are too wide for them"),
  /** Eight values in a row beyond 1σ, some on either side (Nelson 8). */
  EIGHT_BEYOND_ONE_SIGMA(
      8, "the last eight values lie more than 1σ from the mean, some on either side"),
  /** The step from the value before is beyond D4·MR̄ (range chart, ISO 7870-2). */
  RANGE_BEYOND_LIMIT(2, "the step from the value before is larger than the range chart allows");

  private final int window;
  private final String words;

  RunRule(int window, String words) {
    this.window = window;
    this.words = words;
  }

  /** The rules of Western Electric. */
  public static final Set<RunRule> WESTERN_ELECTRIC =
      Collections.unmodifiableSet(EnumSet.range(BEYOND_THREE_SIGMA, EIGHT_ON_ONE_SIDE));

  /** The eight tests of Nelson. */
  public static final Set<RunRule> NELSON =
      Collections.unmodifiableSet(
          EnumSet.complementOf(EnumSet.of(EIGHT_ON_ONE_SIDE, RANGE_BEYOND_LIMIT)));

  /** How many values it looks at. */
  public int window() {
    return window;
  }

  /** The pattern, for a person. */
  public String words() {
    return words;
  }

  /**
   * Whether the pattern is complete at the newest of the values.
   *
   * @param values the last values, oldest first, one or more; fewer than the window hold a pattern
   *     only where it is complete without the missing ones
   */
  boolean completedBy(double[] values, ControlLimits limits) {
    return switch (this) {
      case BEYOND_THREE_SIGMA -> beyond(values, limits, 3, 1, 1);
      case TWO_OF_THREE_BEYOND_TWO_SIGMA -> beyond(values, limits, 2, 2, 3);
      case FOUR_OF_FIVE_BEYOND_ONE_SIGMA -> beyond(values, limits, 1, 4, 5);
      case EIGHT_ON_ONE_SIDE -> beyond(values, limits, 0, 8, 8);
      case NINE_ON_ONE_SIDE -> beyond(values, limits, 0, 9, 9);
      case SIX_RISING_OR_FALLING -> steps(values, 6, 1);
      case FOURTEEN_ALTERNATING -> steps(values, 14, -1);
      case FIFTEEN_WITHIN_ONE_SIGMA -> outside(values, limits, 15) == 0;
      case EIGHT_BEYOND_ONE_SIGMA ->
          outside(values, limits, 8) == 8 && !beyond(values, limits, 0, 8, 8);
      case RANGE_BEYOND_LIMIT ->
          values.length > 1
              && Math.abs(values[values.length - 1] - values[values.length - 2])
                  > limits.upperRange();
    };
  }

  /** Whether the newest and as many more as needed lie beyond so many σ on the newest's side. */
  private static boolean beyond(
      double[] values, ControlLimits limits, double sigmas, int needed, int window) {
    double newest = limits.sigmasFromMean(values[values.length - 1]);
    int found = 0;
    for (int i = Math.max(0, values.length - window); i < values.length; i++) {
      double distance = Math.copySign(1, newest) * limits.sigmasFromMean(values[i]);
      if (distance > sigmas) {
        found++;
      }
    }
    return found >= needed && Math.abs(newest) > sigmas;
  }

  /** Whether each step has the direction of the one before (+1) or the other one (−1). */
  private static boolean steps(double[] values, int window, int turn) {
    if (values.length < window) {
      return false;
    }
    double direction = 0;
    for (int i = values.length - window + 1; i < values.length; i++) {
      double step = Math.signum(values[i] - values[i - 1]);
      if (step == 0 || (direction != 0 && step != turn * direction)) {
        return false;
      }
      direction = step;
    }
    return true;
  }

  /** How many of the last values lie more than 1σ from the mean; −1 where there are fewer. */
  private static int outside(double[] values, ControlLimits limits, int window) {
    if (values.length < window) {
      return -1;
    }
    int count = 0;
    for (int i = values.length - window; i < values.length; i++) {
      if (Math.abs(limits.sigmasFromMean(values[i])) > 1) {
        count++;
      }
    }
    return count;
  }
}
