package org.restpoint.stability.fault;

import java.util.OptionalDouble;

/**
 * A solution as the chain showed it. Refuses, with an {@link IllegalArgumentException}, what is not
 * finite and a noise or spread below 0.
 *
 * @param solution its name
 * @param log10MolesPerLitre logarithm of its concentration in mol/L; empty where that is not known
 * @param millivolts its potential at rest, or the mean of the readings where it never rested
 * @param noiseMillivolts standard deviation of the readings, where there were enough
 * @param spreadMillivolts largest minus smallest of the readings, where there were enough
 */
public record FaultReading(
    String solution,
    OptionalDouble log10MolesPerLitre,
    double millivolts,
    OptionalDouble noiseMillivolts,
    OptionalDouble spreadMillivolts) {

  public FaultReading {
    if (!Double.isFinite(millivolts) || !Double.isFinite(log10MolesPerLitre.orElse(0))) {
      throw new IllegalArgumentException("a potential and a logarithm are finite numbers");
    }
    require0OrAbove(noiseMillivolts.orElse(0));
    require0OrAbove(spreadMillivolts.orElse(0));
  }

  private static void require0OrAbove(double value) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException("a noise and a spread are finite, 0 or above");
    }
  }

  /** A standard at rest, of which nothing but its potential is known. */
  public static FaultReading standard(
      String solution, double log10MolesPerLitre, double millivolts) {
    return new FaultReading(
        solution,
        OptionalDouble.of(log10MolesPerLitre),
        millivolts,
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  boolean known() {
    return log10MolesPerLitre.isPresent();
  }

  double logarithm() {
    return log10MolesPerLitre.orElseThrow();
  }
}
