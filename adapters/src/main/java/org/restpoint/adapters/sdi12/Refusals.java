package org.restpoint.adapters.sdi12;

import org.restpoint.adapters.bus.Outcome.Rejected;
import org.restpoint.adapters.text.Excerpt;

/** Why an answer is no reading, in words. */
final class Refusals {

  private static final String GARBLED =
      "Look at the cable and its length, for two sensors with the same address, and at the"
          + " converter's speed";

  private Refusals() {}

  static Rejected malformed(String reason) {
    return new Rejected(reason, GARBLED);
  }

  static Rejected half(String beginning) {
    return new Rejected("\"%s\" has no end".formatted(Excerpt.of(beginning)), GARBLED);
  }

  static Rejected foreign(String line) {
    char first = line.charAt(0);
    if (!SensorAddress.isOne(first)) {
      return malformed("\"%s\" begins with no sensor's address".formatted(Excerpt.of(line)));
    }
    return new Rejected(
        "sensor %s answered instead: \"%s\"".formatted(first, Excerpt.of(line)),
        "That sensor answers later than it is waited for: give answer-within more time");
  }

  static Rejected unknown(Measurement measurement) {
    return new Rejected(
        "the sensor has no values to measure with %s".formatted(measurement.body()),
        "Choose another command: the sensor's manual names those that it knows");
  }

  static Rejected aborted(Measurement measurement) {
    return new Rejected(
        "the measurement %s was aborted, it has no values".formatted(measurement.body()),
        "Look at the sensor's supply, and for another device that asks on the same bus");
  }

  static Rejected miscounted(Measurement measurement, int announced, int came) {
    return new Rejected(
        "the measurement %s announced %d %s and gave %d"
            .formatted(measurement.body(), announced, announced == 1 ? "value" : "values", came),
        "Look whether an answer was lost: try crc: true, and another command of the sensor");
  }

  static Rejected missing(Measurement measurement, int came, String name, int place) {
    return new Rejected(
        "the measurement %s gives %d %s, and %s is to be number %d"
            .formatted(measurement.body(), came, came == 1 ? "value" : "values", name, place),
        "Correct the number of the value in the station file, or choose another command");
  }

  static Rejected unbelieved(String reason) {
    return new Rejected(
        reason, "Look at the electrode and its plug, and at which value of the sensor is read");
  }
}
