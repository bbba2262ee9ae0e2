package org.restpoint.config.station;

/** What a device's number of a potential is. */
public sealed interface PotentialNumber {

  /** What the number is called in a station file. */
  String key();

  /** It is in mV. */
  record Millivolts() implements PotentialNumber {
    @Override
    public String key() {
      return "millivolts";
    }
  }

  /** It is in V. */
  record Volts() implements PotentialNumber {
    @Override
    public String key() {
      return "volts";
    }
  }

  /** It is in µV. */
  record Microvolts() implements PotentialNumber {
    @Override
    public String key() {
      return "microvolts";
    }
  }

  /**
   * It is the raw counts of a converter.
   *
   * @param millivoltsPerCount mV a count, not zero
   * @param offsetMillivolts the potential at count 0, in mV
   */
  record Counts(double millivoltsPerCount, double offsetMillivolts) implements PotentialNumber {
    @Override
    public String key() {
      return "counts";
    }
  }
}
