package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * Ids that a replay gives again: the probe's name, the time, what it is where that needs saying,
 * and a count where two things happen in one millisecond or the clock was put back. The name comes
 * first and the time has a point in it, which no name has, so the ids of two probes never meet.
 */
public final class Ids {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss.SSS'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private final String probe;
  private final String kind;
  private long lastMillis;
  private int count;

  /**
   * Ids that go on.
   *
   * @param probe the probe's name
   * @param kind what stands behind the time: nothing, or a word with a hyphen before it
   * @param lastMillis the time of the id given last
   * @param count how many ids bear it
   */
  Ids(String probe, String kind, long lastMillis, int count) {
    this.probe = probe;
    this.kind = kind;
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
    String id = of(probe, Instant.ofEpochMilli(lastMillis), kind);
    return count == 1 ? id : id + "-" + count;
  }

  /** An id of what cannot happen twice in one millisecond. */
  public static String of(String probe, Instant time, String kind) {
    return probe + "-" + TIME.format(time) + kind;
  }

  long lastMillis() {
    return lastMillis;
  }

  int count() {
    return count;
  }
}
