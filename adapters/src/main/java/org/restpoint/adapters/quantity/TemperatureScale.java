package org.restpoint.adapters.quantity;

import org.restpoint.stability.thermometer.ResistanceThermometer;
import org.restpoint.stability.thermometer.ThermometerReading;
import org.restpoint.stability.thermometer.ThermometerReading.OutOfRange;

/** How a device's number becomes a temperature in °C. */
public sealed interface TemperatureScale {

  /** A number in °C. */
  TemperatureScale CELSIUS = new Straight("celsius", 1, 0);

  /** A number in K. */
  TemperatureScale KELVIN = new Straight("kelvin", 1, -273.15);

  /** A number in °F. */
  TemperatureScale FAHRENHEIT = new Straight("fahrenheit", 5.0 / 9, -160.0 / 9);

  /** What the number is called where a probe is wired, as for {@link PotentialScale#name()}. */
  String name();

  /** What a number says about the temperature. */
  Told told(double number);

  /**
   * A number on a straight scale. Refuses, with an {@link IllegalArgumentException}, a factor that
   * is zero or not finite and an offset that is not finite.
   *
   * @param name as {@link TemperatureScale#name()}
   * @param celsiusPerUnit K a unit of the number
   * @param offsetCelsius the temperature at number 0, in °C
   */
  record Straight(String name, double celsiusPerUnit, double offsetCelsius)
      implements TemperatureScale {

    public Straight {
      if (celsiusPerUnit == 0 || !Double.isFinite(celsiusPerUnit)) {
        throw new IllegalArgumentException(
            "the factor from a number to K is finite and not zero, not " + celsiusPerUnit);
      }
      if (!Double.isFinite(offsetCelsius)) {
        throw new IllegalArgumentException("the offset is finite, not " + offsetCelsius);
      }
    }

    @Override
    public Told told(double number) {
      return new Told.Celsius(number * celsiusPerUnit + offsetCelsius);
    }
  }

  /**
   * The resistance of a thermometer, in Ω.
   *
   * @param thermometer which thermometer
   */
  record Ohms(ResistanceThermometer thermometer) implements TemperatureScale {

    @Override
    public String name() {
      return "ohms";
    }

    @Override
    public Told told(double number) {
      ThermometerReading reading = thermometer.celsius(number);
      if (reading instanceof ThermometerReading.Celsius celsius) {
        return new Told.Celsius(celsius.value());
      }
      return new Told.Nothing(((OutOfRange) reading).reason().text());
    }
  }

  /** What a number says about a temperature. */
  sealed interface Told {

    /**
     * A temperature.
     *
     * @param value °C, whether it can be believed or not
     */
    record Celsius(double value) implements Told {}

    /**
     * No temperature follows from the number.
     *
     * @param reason why, a clause without a full stop
     */
    record Nothing(String reason) implements Told {}
  }
}
