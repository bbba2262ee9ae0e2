package org.restpoint.adapters.sdi12;

import org.restpoint.adapters.sdi12.Answer.Malformed;
import org.restpoint.adapters.sdi12.Answer.Understood;
import org.restpoint.adapters.sdi12.Measurement.Kind;
import org.restpoint.adapters.text.Excerpt;

/**
 * What a sensor says when it is told to measure: {@code atttn} (Table 9) or, for a concurrent
 * measurement, {@code atttnn} (Table 10).
 *
 * @param seconds after how long the values are there at the latest, 0 to 999
 * @param values how many there will be; 0 for a measurement that it does not know
 */
record Announcement(int seconds, int values) {

  private static final int SECONDS_DIGITS = 3;

  /** What a line that begins with the sensor's address announces. */
  static Answer<Announcement> read(String line, Kind kind) {
    int digits = SECONDS_DIGITS + kind.countDigits();
    String body = line.substring(1);
    if (body.length() != digits || !body.chars().allMatch(c -> c >= '0' && c <= '9')) {
      return new Malformed<>(
          "\"%s\" does not announce a measurement: %d digits follow the address"
              .formatted(Excerpt.of(line), digits));
    }
    return new Understood<>(
        new Announcement(
            Integer.parseInt(body.substring(0, SECONDS_DIGITS)),
            Integer.parseInt(body.substring(SECONDS_DIGITS))));
  }
}
