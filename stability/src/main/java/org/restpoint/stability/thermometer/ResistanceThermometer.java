package org.restpoint.stability.thermometer;

/**
 * A thermometer whose resistance, Ω, tells a temperature, °C.
 *
 * <p>Each kind works in a range of its own, in which the resistance only rises (platinum) or only
 * falls (thermistors), so that there and back again gives the same temperature.
 */
public sealed interface ResistanceThermometer permits Platinum, SteinhartHart, Beta {

  /**
   * The temperature that a resistance tells.
   *
   * @param ohms as measured; any double, for a broken wire or a short is a case of the answer
   */
  ThermometerReading celsius(double ohms);

  /**
   * The resistance at a temperature, Ω.
   *
   * @throws IllegalArgumentException when the temperature is outside the thermometer's range
   */
  double ohms(double celsius);
}
