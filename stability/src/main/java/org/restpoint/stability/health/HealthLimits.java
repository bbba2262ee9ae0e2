package org.restpoint.stability.health;

import java.util.OptionalDouble;

/**
 * Where a quantity should not go, in its unit. Refuses, with an {@link IllegalArgumentException}, a
 * low limit above the high one.
 *
 * @param low the lowest that is accepted, if there is one: 90 % for a slope
 * @param high the highest that is accepted, if there is one
 */
public record HealthLimits(OptionalDouble low, OptionalDouble high) {

  public HealthLimits {
    if (low.isPresent() && high.isPresent() && !(low.getAsDouble() < high.getAsDouble())) {
      throw new IllegalArgumentException("the low limit is below the high one");
    }
  }

  /** No limits: trends are told, but not where they lead. */
  public static HealthLimits none() {
    return new HealthLimits(OptionalDouble.empty(), OptionalDouble.empty());
  }

  /** The limit that something going this way comes to. */
  OptionalDouble ahead(double perDay) {
    return perDay < 0 ? low : high;
  }
}
