package org.restpoint.stability.calibration;

/**
 * The lowest concentration that an electrode tells from none, by its curve: where the prolonged
 * straight line crosses the level that the potential tends to, which is at b (IUPAC; see {@link
 * ResponseCurve}).
 *
 * @param molesPerLitre b, above zero
 * @param standardUncertainty u(b), mol/L, k = 1
 */
public record DetectionLimit(double molesPerLitre, double standardUncertainty) {}
