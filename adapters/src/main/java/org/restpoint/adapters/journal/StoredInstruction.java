package org.restpoint.adapters.journal;

import java.time.Instant;
import java.time.temporal.ChronoUnit;

/**
 * An instruction a probe was given, kept so that its repetition is recognised. Refuses, with an
 * {@link IllegalArgumentException}, a time finer than a millisecond.
 *
 * @param id the caller's identity for it; unique within the probe
 * @param probe the probe's name
 * @param time when it was taken, to the millisecond
 * @param json the whole of it; the journal does not look inside
 */
public record StoredInstruction(String id, String probe, Instant time, String json) {

  public StoredInstruction {
    if (!time.equals(time.truncatedTo(ChronoUnit.MILLIS))) {
      throw new IllegalArgumentException("the time of an instruction is finer than a millisecond");
    }
  }
}
