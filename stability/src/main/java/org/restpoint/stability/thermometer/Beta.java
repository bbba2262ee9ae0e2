package org.restpoint.stability.thermometer;

import org.restpoint.stability.electrode.Nernst;

/**
 * A thermistor of falling resistance (NTC) by two figures of its data sheet.
 *
 * <p>{@code R = R0·exp(β·(1/T − 1/T0))}, T in K, R in Ω; inverse {@code 1/T = 1/T0 + ln(R/R0)/β}.
 * It is exact at the reference only: a real thermistor's β rises with temperature, so that the
 * reading is off by some tenths of a kelvin 25 K away. {@link SteinhartHart} through three points
 * does better.
 *
 * <p>Edge results: works from −50 to 150 °C, ends included; resistances beyond are {@link
 * ThermometerReading.OutOfRange}; a temperature beyond is an {@link IllegalArgumentException}, and
 * so are figures that are no thermistor's.
 *
 * <p>Reference: J. A. Becker, C. B. Green, G. L. Pearson, Properties and uses of thermistors, Bell
 * System Technical Journal 26 (1947) 170, doi 10.1002/j.1538-7305.1947.tb01314.x.
 *
 * @param ohmsAtReference R0, Ω, above zero
 * @param referenceCelsius the temperature of R0, °C, nearly always 25
 * @param beta β, K, above zero; 3000 to 5000 as a rule
 */
public record Beta(double ohmsAtReference, double referenceCelsius, double beta)
    implements ResistanceThermometer {

  public Beta {
    if (!(ohmsAtReference > 0) || Double.isInfinite(ohmsAtReference)) {
      throw new IllegalArgumentException(
          "the resistance at the reference is above zero, not " + ohmsAtReference);
    }
    if (!(beta > 0) || Double.isInfinite(beta)) {
      throw new IllegalArgumentException("beta is above zero, in K, not " + beta);
    }
    double reference = Nernst.kelvin(referenceCelsius);
    WorkingRange.ofThermistor(
        ohms(ohmsAtReference, reference, beta, WorkingRange.THERMISTOR_LOWEST_CELSIUS),
        ohms(ohmsAtReference, reference, beta, WorkingRange.THERMISTOR_HIGHEST_CELSIUS));
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
    double kelvin =
        1 / (1 / Nernst.kelvin(referenceCelsius) + Math.log(ohms / ohmsAtReference) / beta);
    return range.reading(kelvin - Nernst.ZERO_CELSIUS_KELVIN, -kelvin * kelvin / (beta * ohms));
  }

  @Override
  public double ohms(double celsius) {
    WorkingRange.checked(
        celsius, WorkingRange.THERMISTOR_LOWEST_CELSIUS, WorkingRange.THERMISTOR_HIGHEST_CELSIUS);
    return ohms(ohmsAtReference, Nernst.kelvin(referenceCelsius), beta, celsius);
  }

  private static double ohms(
      double ohmsAtReference, double reference, double beta, double celsius) {
    return ohmsAtReference * Math.exp(beta * (1 / Nernst.kelvin(celsius) - 1 / reference));
  }
}
