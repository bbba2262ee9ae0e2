package org.restpoint.adapters.simulated;

import java.math.BigDecimal;

/**
 * How finely an instrument shows. Refuses, with an {@link IllegalArgumentException}, steps that are
 * not above 0.
 *
 * @param stepMillivolts the least difference of potentials it shows, in mV
 * @param stepKelvin the least difference of temperatures it shows, in K
 */
public record Display(double stepMillivolts, double stepKelvin) {

  /** What a bench meter commonly shows: 0.01 mV and 0.1 °C. */
  public static final Display USUAL = new Display(0.01, 0.1);

  public Display {
    if (!isStep(stepMillivolts) || !isStep(stepKelvin)) {
      throw new IllegalArgumentException("the steps of a display are above 0 and finite");
    }
  }

  double millivolts(double value) {
    return shown(value, stepMillivolts);
  }

  double celsius(double value) {
    return shown(value, stepKelvin);
  }

  /** The double nearest to the decimal number that is shown. */
  private static double shown(double value, double step) {
    return BigDecimal.valueOf(Math.rint(value / step))
        .multiply(BigDecimal.valueOf(step))
        .doubleValue();
  }

  private static boolean isStep(double step) {
    return step > 0 && step < Double.POSITIVE_INFINITY;
  }
}
