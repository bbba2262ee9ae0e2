package org.restpoint.stability.thermometer;

import org.restpoint.stability.electrode.Nernst;

/**
 * A thermistor of falling resistance (NTC) by Steinhart and Hart's equation.
 *
 * <p>{@code 1/T = a + b·L + c·L³}, {@code L = ln R}, T in K, R in Ω. Coefficients belong to one
 * kind of part, often to one part: those of another of the same nominal resistance read several
 * tenths of a kelvin wrong without any sign of it.
 *
 * <p>Method of the inverse: Cardano's solution of {@code c·L³ + b·L = y}, {@code y = 1/T − a}, in
 * the hyperbolic form, which does not cancel as c becomes small. With {@code s = √(b/(3|c|))} and
 * {@code h = 3y/(2bs)}: {@code L = 2s·sinh(asinh(h)/3)} for c above 0, {@code L =
 * 2s·sin(asin(h)/3)} for c below 0, which is the root between the two turning points; {@code L =
 * y/b} where the cubic term is lost in rounding.
 *
 * <p>Edge results:
 *
 * <ul>
 *   <li>works from −50 to 150 °C, ends included; resistances beyond are {@link
 *       ThermometerReading.OutOfRange}, a temperature beyond is an {@link
 *       IllegalArgumentException};
 *   <li>coefficients that are not finite, a b not above 0, a curve that turns between −50 and 150
 *       °C or has no resistance there: {@link IllegalArgumentException};
 *   <li>three points of which two have the same resistance, or that do not fall with temperature:
 *       {@link IllegalArgumentException}.
 * </ul>
 *
 * <p>Reference: J. S. Steinhart, S. R. Hart, Calibration curves for thermistors, Deep-Sea Research
 * 15 (1968) 497, doi 10.1016/0011-7471(68)90057-0.
 *
 * @param a 1/K
 * @param b 1/K, per unit of L
 * @param c 1/K, per unit of L³
 */
public record SteinhartHart(double a, double b, double c) implements ResistanceThermometer {

  public SteinhartHart {
    if (!Double.isFinite(a) || !Double.isFinite(c) || !(b > 0) || Double.isInfinite(b)) {
      throw new IllegalArgumentException(
          "the coefficients of a thermistor are finite, and b above zero; these are "
              + a
              + ", "
              + b
              + ", "
              + c
              + ": look whether their order is a, b, c and their resistance in ohm");
    }
    WorkingRange.ofThermistor(
        Math.exp(logarithm(a, b, c, WorkingRange.THERMISTOR_LOWEST_CELSIUS)),
        Math.exp(logarithm(a, b, c, WorkingRange.THERMISTOR_HIGHEST_CELSIUS)));
  }

  /**
   * The curve through three points, which best lie at the ends and in the middle of the
   * temperatures of interest.
   *
   * @throws IllegalArgumentException when no thermistor has these resistances
   */
  public static SteinhartHart through(
      ThermistorPoint one, ThermistorPoint two, ThermistorPoint three) {
    double l1 = one.logarithm();
    double l2 = two.logarithm();
    double l3 = three.logarithm();
    if (l1 == l2 || l2 == l3 || l1 == l3) {
      throw new IllegalArgumentException(
          "three points have three resistances, not " + one + ", " + two + " and " + three);
    }
    double slope12 = (two.perKelvin() - one.perKelvin()) / (l2 - l1);
    double slope13 = (three.perKelvin() - one.perKelvin()) / (l3 - l1);
    double c = (slope13 - slope12) / ((l3 - l2) * (l1 + l2 + l3));
    double b = slope12 - c * (l1 * l1 + l1 * l2 + l2 * l2);
    double a = one.perKelvin() - l1 * (b + c * l1 * l1);
    if (!(b > 0) || !Double.isFinite(a + b + c)) {
      throw new IllegalArgumentException(
          "a thermistor's resistance falls as it gets warmer, which it does not over "
              + one
              + ", "
              + two
              + " and "
              + three
              + ": look whether temperatures were swapped");
    }
    return new SteinhartHart(a, b, c);
  }

  @Override
  public ThermometerReading celsius(double ohms) {
    WorkingRange range =
        WorkingRange.ofThermistor(
            ohms(WorkingRange.THERMISTOR_LOWEST_CELSIUS),
            ohms(WorkingRange.THERMISTOR_HIGHEST_CELSIUS));
    if (!range.holds(ohms)) {
      return range.refused(ohms);
    }
    double l = Math.log(ohms);
    double kelvin = 1 / (a + l * (b + c * l * l));
    return range.reading(
        kelvin - Nernst.ZERO_CELSIUS_KELVIN, -kelvin * kelvin * (b + 3 * c * l * l) / ohms);
  }

  @Override
  public double ohms(double celsius) {
    WorkingRange.checked(
        celsius, WorkingRange.THERMISTOR_LOWEST_CELSIUS, WorkingRange.THERMISTOR_HIGHEST_CELSIUS);
    return Math.exp(logarithm(a, b, c, celsius));
  }

  /** L at a temperature; not a number where a curve that turns does not reach it. */
  private static double logarithm(double a, double b, double c, double celsius) {
    double y = 1 / Nernst.kelvin(celsius) - a;
    double line = y / b;
    if (b + 3 * c * line * line == b) {
      return line;
    }
    double scale = Math.sqrt(b / (3 * Math.abs(c)));
    double h = 1.5 * line / scale;
    return c > 0
        ? 2 * scale * Math.sinh(inverseSinh(h) / 3)
        : 2 * scale * Math.sin(Math.asin(h) / 3);
  }

  /** ln(h + √(h² + 1)), without cancelling for small or negative h. */
  private static double inverseSinh(double h) {
    double size = Math.abs(h);
    double square = size * size;
    return Math.copySign(Math.log1p(size + square / (1 + Math.sqrt(1 + square))), h);
  }
}
