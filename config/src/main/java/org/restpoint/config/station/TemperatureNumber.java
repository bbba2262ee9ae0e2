package org.restpoint.config.station;

/** What a device's number of a temperature is. */
public sealed interface TemperatureNumber {

  /** What the number is called in a station file. */
  String key();

  /** It is in °C. */
  record Celsius() implements TemperatureNumber {
    @Override
    public String key() {
      return "celsius";
    }
  }

  /** It is in K. */
  record Kelvin() implements TemperatureNumber {
    @Override
    public String key() {
      return "kelvin";
    }
  }

  /** It is in °F. */
  record Fahrenheit() implements TemperatureNumber {
    @Override
    public String key() {
      return "fahrenheit";
    }
  }

  /**
   * It is the resistance of a thermometer, in Ω.
   *
   * @param thermometer which thermometer
   */
  record Ohms(Thermometer thermometer) implements TemperatureNumber {
    @Override
    public String key() {
      return "ohms";
    }
  }
}
