package org.restpoint.config.station;

/**
 * What an SDI-12 sensor is asked to measure.
 *
 * @param kind how it is asked
 * @param number which of its measurements, 0 to 9
 */
public record SensorCommand(Kind kind, int number) {

  /** How a sensor is asked. */
  public enum Kind {
    /** {@code M}: the bus is its own until it is done. */
    ALONE("M"),
    /** {@code C}: others are asked while it measures. */
    CONCURRENT("C"),
    /** {@code R}: it answers with values at once. */
    CONTINUOUS("R");

    private final String letter;

    Kind(String letter) {
      this.letter = letter;
    }
  }

  /** As it is written: {@code M}, {@code C3}, {@code R0}. */
  public String key() {
    return kind.letter + (number > 0 || kind == Kind.CONTINUOUS ? String.valueOf(number) : "");
  }
}
