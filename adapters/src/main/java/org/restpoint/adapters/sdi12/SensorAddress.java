package org.restpoint.adapters.sdi12;

/**
 * Which sensor of a bus: 62 are possible. A sensor leaves its maker as 0. Refuses, with an {@link
 * IllegalArgumentException}, what {@link #isOne} denies.
 *
 * @param character a digit or an ASCII letter
 */
public record SensorAddress(char character) {

  public SensorAddress {
    if (!isOne(character)) {
      throw new IllegalArgumentException(
          "the address of an SDI-12 sensor is 0 to 9, A to Z or a to z, not " + character);
    }
  }

  /** Whether it is the address of a sensor. */
  public static boolean isOne(char character) {
    return (character >= '0' && character <= '9')
        || (character >= 'A' && character <= 'Z')
        || (character >= 'a' && character <= 'z');
  }

  /** Whether a line begins with this address, as every answer of the sensor does. */
  boolean begins(String line) {
    return !line.isEmpty() && line.charAt(0) == character;
  }

  @Override
  public String toString() {
    return String.valueOf(character);
  }
}
