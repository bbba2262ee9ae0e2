package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * Ids that a replay gives again: the probe's name and the time, and a count where two things happen
 * in one millisecond or the clock was put back.
 */
final class Ids {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss.SSS'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private final String probe;
  private long lastMillis;
  private int count;

  Ids(String probe, long lastMillis, int count) {
    this.probe = probe;
    this.lastMillis = lastMillis;
    this.count = count;
  }

  String next(Instant time) {
    long millis = time.toEpochMilli();
    if (millis > lastMillis) {
      lastMillis = millis;
      count = 1;
    } else {
      count++;
    }
    String id = probe + "-" + TIME.format(Instant.ofEpochMilli(lastMillis));
    return count == 1 ? id : id + "-" + count;
  }

  long lastMillis() {
    return lastMillis;
  }

  int count() {
    return count;
  }
}
