package org.restpoint.adapters.journal;

import java.time.Instant;
import java.time.temporal.ChronoUnit;

/**
 * Something that was decided, kept for good: a result, a calibration, a notice. Refuses, with an
 * {@link IllegalArgumentException}, a time finer than a millisecond and a negative revision.
 *
 * @param id its identity, the same over redelivery
 * @param revision 0 or above; a later revision stands beside the earlier ones
 * @param kind what it is, such as {@code result}
 * @param probe the probe's name
 * @param time when it was decided, to the millisecond
 * @param json the whole of it; the journal does not look inside
 */
public record StoredEntry(
    String id, int revision, String kind, String probe, Instant time, String json) {

  public StoredEntry {
    if (revision < 0) {
      throw new IllegalArgumentException("the revision %d is negative".formatted(revision));
    }
    if (!time.equals(time.truncatedTo(ChronoUnit.MILLIS))) {
      throw new IllegalArgumentException("the time of an entry is finer than a millisecond");
    }
  }
}
