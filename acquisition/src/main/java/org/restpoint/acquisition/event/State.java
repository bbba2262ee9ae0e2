package org.restpoint.acquisition.event;

import java.time.Instant;
import java.util.Optional;

/**
 * What a probe is doing and what comes next.
 *
 * @param station the station's name
 * @param probe the probe's name
 * @param time since when
 * @param state {@code in storage}, {@code needs soaking}, {@code soaking}, {@code needs
 *     calibration}, {@code ready}, {@code reading standard}, {@code reading sample}, {@code
 *     verifying}, {@code rinse due}, {@code in stream} or {@code out of stream}
 * @param until when its soaking is over, while it soaks
 * @param outSince since when the tip is out of solution, where somebody told so
 * @param nextStep the next step for the person or the rig, in plain words
 * @param cup the cup of a batch that the electrode is in or goes to next
 */
public record State(
    String station,
    String probe,
    Instant time,
    String state,
    Optional<Instant> until,
    Optional<Instant> outSince,
    String nextStep,
    Optional<String> cup)
    implements Event {}
