package org.restpoint.stability.thermometer;

/**
 * An industrial platinum resistance thermometer: Pt100, Pt500, Pt1000.
 *
 * <p>Callendar and Van Dusen's equation, t in °C on the ITS-90, R in Ω:
 *
 * <ul>
 *   <li>0 to 850 °C: {@code R = R0·(1 + A·t + B·t²)};
 *   <li>−200 to 0 °C: {@code R = R0·(1 + A·t + B·t² + C·(t − 100 °C)·t³)}.
 * </ul>
 *
 * <p>Method of the inverse, with {@code w = R/R0 − 1}: from 0 °C up {@code t = 2w/(A + √(A² +
 * 4Bw))}, the root of the quadratic in the form that does not cancel near 0 °C. Below, Newton's
 * steps from that root. The curve is concave there, so every step ends left of the solution or at
 * it, and the steps close in on it from there; a last step below 10⁻⁶ K leaves less than 10⁻¹² K.
 *
 * <p>Edge results: the ends of the range, −200 and 850 °C, are inside; resistances beyond are
 * {@link ThermometerReading.OutOfRange}; a temperature beyond is an {@link
 * IllegalArgumentException}, and so is an R0 that is not finite and above zero. Platinum of another
 * purity (α = 0.003916 or 0.003926 /K) follows other coefficients and is not meant here.
 *
 * <p>Reference: IEC 60751:2022, Industrial platinum resistance thermometers and platinum
 * temperature sensors, clause 4; the coefficients are those of IEC 60751:1983/AMD2:1995, α =
 * 0.003851 /K.
 *
 * @param ohmsAtZero R0, Ω, nominal or as calibrated
 */
public record Platinum(double ohmsAtZero) implements ResistanceThermometer {

  /** A, 1/K. */
  public static final double A = 3.9083e-3;

  /** B, 1/K². */
  public static final double B = -5.775e-7;

  /** C, 1/K⁴, below 0 °C. */
  public static final double C = -4.183e-12;

  /** The lowest temperature of the equation, °C. */
  public static final double LOWEST_CELSIUS = -200;

  /** The highest temperature of the equation, °C. */
  public static final double HIGHEST_CELSIUS = 850;

  private static final double SMALL_STEP_KELVIN = 1e-6;

  public Platinum {
    if (!(ohmsAtZero > 0) || Double.isInfinite(ohmsAtZero)) {
      throw new IllegalArgumentException(
          "the resistance at 0 °C is above zero, 100 for a Pt100, not " + ohmsAtZero);
    }
  }

  @Override
  public ThermometerReading celsius(double ohms) {
    WorkingRange range =
        new WorkingRange(
            LOWEST_CELSIUS, HIGHEST_CELSIUS, ohms(LOWEST_CELSIUS), ohms(HIGHEST_CELSIUS));
    if (!range.holds(ohms)) {
      return range.refused(ohms);
    }
    double w = ohms / ohmsAtZero - 1;
    double celsius = 2 * w / (A + Math.sqrt(A * A + 4 * B * w));
    if (w < 0) {
      double step;
      do {
        step = (ratio(celsius) - 1 - w) / ratioPerKelvin(celsius);
        celsius -= step;
      } while (Math.abs(step) > SMALL_STEP_KELVIN);
    }
    return range.reading(celsius, 1 / (ohmsAtZero * ratioPerKelvin(celsius)));
  }

  @Override
  public double ohms(double celsius) {
    return ohmsAtZero * ratio(WorkingRange.checked(celsius, LOWEST_CELSIUS, HIGHEST_CELSIUS));
  }

  /** R/R0. */
  private static double ratio(double t) {
    double below = t < 0 ? C * (t - 100) * t * t * t : 0;
    return 1 + A * t + B * t * t + below;
  }

  private static double ratioPerKelvin(double t) {
    double below = t < 0 ? C * (4 * t - 300) * t * t : 0;
    return A + 2 * B * t + below;
  }
}
