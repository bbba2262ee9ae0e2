package org.restpoint.adapters.quantity;

import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.adapters.quantity.TemperatureScale.Told;

/**
 * What the numbers of one probe mean. Refuses, with an {@link IllegalArgumentException}, to be
 * without both.
 *
 * @param potential how the potential comes; empty for a thermometer
 * @param temperature how the temperature comes; empty where none does
 */
public record Meaning(Optional<PotentialScale> potential, Optional<TemperatureScale> temperature) {

  /**
   * The largest potential believed, in mV either way: five times the ±2 V that the input of an
   * electrode meter spans at most, so it only catches what was never a potential.
   */
  public static final double MOST_MILLIVOLTS = 10_000;

  /** The lowest temperature believed, in °C: below it no sample is liquid. */
  public static final double LEAST_CELSIUS = -30;

  /** The highest temperature believed, in °C: above it no electrode is used. */
  public static final double MOST_CELSIUS = 130;

  private static final BelievedRange MILLIVOLTS =
      new BelievedRange("mV", -MOST_MILLIVOLTS, MOST_MILLIVOLTS);
  private static final BelievedRange CELSIUS =
      new BelievedRange("Cel", LEAST_CELSIUS, MOST_CELSIUS);

  public Meaning {
    if (potential.isEmpty() && temperature.isEmpty()) {
      throw new IllegalArgumentException("a probe gives a potential, a temperature or both");
    }
  }

  /**
   * What the numbers say.
   *
   * <ul>
   *   <li>An electrode's reading needs its potential; without the temperature it has none.
   *   <li>A thermometer's reading needs its temperature.
   *   <li>A number that is not believed, in mV or °C, rejects the whole.
   * </ul>
   *
   * @param potentialNumber as sent; not looked at for a thermometer
   * @param temperatureNumber as sent; not looked at where no temperature comes
   */
  public Parsed parsed(OptionalDouble potentialNumber, OptionalDouble temperatureNumber) {
    OptionalDouble millivolts = OptionalDouble.empty();
    OptionalDouble celsius = OptionalDouble.empty();
    if (potential.isPresent()) {
      if (potentialNumber.isEmpty()) {
        return new Parsed.Rejected("there is no " + potential.get().name());
      }
      double value = potential.get().millivolts(potentialNumber.getAsDouble());
      Optional<String> fault = MILLIVOLTS.fault(value);
      if (fault.isPresent()) {
        return new Parsed.Rejected(fault.get());
      }
      millivolts = OptionalDouble.of(value);
    }
    if (temperature.isPresent() && temperatureNumber.isPresent()) {
      Told told = temperature.get().told(temperatureNumber.getAsDouble());
      if (told instanceof Told.Nothing nothing) {
        return new Parsed.Rejected(nothing.reason());
      }
      double value = ((Told.Celsius) told).value();
      Optional<String> fault = CELSIUS.fault(value);
      if (fault.isPresent()) {
        return new Parsed.Rejected(fault.get());
      }
      celsius = OptionalDouble.of(value);
    }
    return millivolts.isEmpty() && celsius.isEmpty()
        ? new Parsed.Rejected("there is no " + temperature.map(TemperatureScale::name).orElse(""))
        : new Parsed.Values(millivolts, celsius);
  }
}
