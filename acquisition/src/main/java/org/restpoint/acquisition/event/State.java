package org.restpoint.acquisition.event;

import java.time.Instant;
import java.util.Optional;

/**
 * What a probe is doing and what comes next.
 *
 * @param station the station's name
 * @param probe the probe's name
 * @param time since when
 * @param state {@code needs calibration}, {@code ready}, {@code reading standard}, {@code reading
 *     sample}, {@code verifying}, {@code soaking}, {@code in stream} or {@code out of stream}
 * @param nextStep the next step for the person or the rig, in plain words
 * @param cup the cup of a batch that the electrode is in or goes to next
 */
public record State(
    String station,
    String probe,
    Instant time,
    String state,
    String nextStep,
    Optional<String> cup)
    implements Event {

  /** A state that is of no cup. */
  public State(String station, String probe, Instant time, String state, String nextStep) {
    this(station, probe, time, state, nextStep, Optional.empty());
  }
}
