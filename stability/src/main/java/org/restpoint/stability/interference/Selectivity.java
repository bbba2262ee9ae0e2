package org.restpoint.stability.interference;

/**
 * A measured selectivity coefficient.
 *
 * @param value K_ij, above zero, in (mol/L)^(1 − z_i/z_j)
 * @param relativeStandardUncertainty u(K)/K, k = 1, 0 or above
 */
public record Selectivity(double value, double relativeStandardUncertainty) {

  public Selectivity {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException("a selectivity coefficient is above 0, not " + value);
    }
    if (!(relativeStandardUncertainty >= 0) || Double.isInfinite(relativeStandardUncertainty)) {
      throw new IllegalArgumentException(
          "a relative uncertainty is 0 or above, not " + relativeStandardUncertainty);
    }
  }

  /** log10 K, as tables list it. */
  public double log10() {
    return Math.log10(value);
  }
}
