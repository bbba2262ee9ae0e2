package org.restpoint.stability.thermometer;

/**
 * How far an industrial platinum thermometer may be off, t in °C:
 *
 * <ul>
 *   <li>class A: ± (0.15 + 0.002·|t|) K;
 *   <li>class B: ± (0.3 + 0.005·|t|) K.
 * </ul>
 *
 * <p>The bounds say nothing about where between them a thermometer lies, so the error is taken as
 * rectangular: u = bound/√3. It holds for the thermometer as delivered, not for its wiring: two
 * leads of 0.5 Ω each make a Pt100 read 2.6 K high.
 *
 * <p>A maker has to keep a class only in its span, for film resistors −30 to 300 °C in class A and
 * −50 to 500 °C in class B; beyond, the formula goes on, but nobody vouches for it.
 *
 * <p>Edge results: outside −200 to 850 °C, or for no number, an {@link IllegalArgumentException}.
 *
 * <p>Reference: IEC 60751:2022, clause 5 (tolerance classes); JCGM 100:2008, 4.3.7 (rectangular
 * distribution).
 */
public enum Tolerance {
  /** Class A. */
  A(0.15, 0.002),
  /** Class B. */
  B(0.3, 0.005);

  private final double kelvinAtZero;
  private final double kelvinPerKelvin;

  Tolerance(double kelvinAtZero, double kelvinPerKelvin) {
    this.kelvinAtZero = kelvinAtZero;
    this.kelvinPerKelvin = kelvinPerKelvin;
  }

  /** The bound at a temperature, K, either way. */
  public double boundKelvin(double celsius) {
    return kelvinAtZero
        + kelvinPerKelvin
            * Math.abs(
                WorkingRange.checked(celsius, Platinum.LOWEST_CELSIUS, Platinum.HIGHEST_CELSIUS));
  }

  /** The standard uncertainty at a temperature, K, k = 1. */
  public double standardUncertaintyKelvin(double celsius) {
    return boundKelvin(celsius) / Math.sqrt(3);
  }
}
