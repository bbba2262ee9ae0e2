package org.restpoint.stability.settle1;

/**
 * A change of activity at t = 0, and the electrode that meets it.
 *
 * <pre>
 *   E0 = S·log10 a0     E1 = S·log10 a1     mV
 * </pre>
 *
 * Activities a are taken as the concentrations in mol/L and the standard potential as 0 mV: neither
 * changes how an electrode comes to rest.
 *
 * @param kelvin temperature, in K
 * @param slopeMillivoltsPerDecade S
 * @param log10Before log10 a0
 * @param log10After log10 a1
 */
public record Step(
    double kelvin, double slopeMillivoltsPerDecade, double log10Before, double log10After) {

  /** E0, where the potential starts, in mV. */
  public double startMillivolts() {
    return slopeMillivoltsPerDecade * log10Before;
  }

  /** E1, where it comes to rest, in mV. */
  public double restingMillivolts() {
    return slopeMillivoltsPerDecade * log10After;
  }

  /** a0/a1. */
  public double activityRatio() {
    return StrictMath.pow(10, log10Before - log10After);
  }
}
