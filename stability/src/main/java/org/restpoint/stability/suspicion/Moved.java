package org.restpoint.stability.suspicion;

import java.util.OptionalDouble;

/**
 * How far a standard read beside what the calibration expects.
 *
 * @param millivolts the potential found less the expected one, mV
 * @param expectedMolesPerLitre what it holds by its label, mol/L, above 0
 * @param apparentMolesPerLitre what it reads as, mol/L, above 0
 * @param refusedBeforeMillivolts how far the same standard had moved when it was refused just
 *     before, mV
 */
public record Moved(
    double millivolts,
    double expectedMolesPerLitre,
    double apparentMolesPerLitre,
    OptionalDouble refusedBeforeMillivolts) {

  public Moved {
    if (!Double.isFinite(millivolts)
        || !(expectedMolesPerLitre > 0)
        || !(apparentMolesPerLitre > 0)) {
      throw new IllegalArgumentException(
          "a potential is a finite number, and a concentration above 0");
    }
  }

  /** What it reads as beside what it holds; 1 is neither more nor less. */
  public double ratio() {
    return apparentMolesPerLitre / expectedMolesPerLitre;
  }
}
