package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.restpoint.stability.reading.Reading;

/**
 * Whether what a message says follows on what was taken of the same link before. Only what has a
 * time of its own is judged; without one, the time of arrival counts.
 *
 * <ul>
 *   <li>A time further off from the clock than the limit, either way, is refused.
 *   <li>A time that was taken before is a repetition when the values are those of then, and refused
 *       when they are others.
 *   <li>A time before that of the last reading is refused: readings come in the order of time.
 *   <li>A time ahead of the clock, within the limit, is that of arrival: a device whose clock is
 *       fast must not carry the others off into the future. Of a message with several times the
 *       latest becomes that of arrival and the others keep their distance from it.
 *   <li>When the clock itself is put back behind the last reading, what was taken is forgotten.
 * </ul>
 *
 * <p>Remembers the latest {@value #REMEMBERED} times. Used by one thread.
 */
final class Succession {

  static final int REMEMBERED = 1_024;

  /** What becomes of an observation. */
  sealed interface Verdict {

    /** It is the next reading. */
    record Next(Reading reading) implements Verdict {}

    /** It was taken before; why one thinks so, in the middle of a sentence. */
    record Again(String why) implements Verdict {}

    /** It does not fit; why, in the middle of a sentence. */
    record Refused(String why) implements Verdict {}
  }

  private final Duration within;
  private final TreeMap<Instant, Reading> taken = new TreeMap<>();
  private Instant last = Instant.MIN;

  /**
   * @param within how far a time may be off from that of arrival
   */
  Succession(Duration within) {
    this.within = within;
  }

  /** Judges what one message says, in the order of time. */
  List<Verdict> judge(Instant arrival, List<Observation> observations) {
    if (last.isAfter(arrival)) {
      taken.clear();
      last = Instant.MIN;
    }
    Duration ahead = ahead(arrival, observations);
    List<Verdict> verdicts = new ArrayList<>();
    for (Observation observation : observations) {
      verdicts.add(
          observation.ownTime()
              ? judge(arrival, observation, ahead)
              : next(observation.reading(), observation));
    }
    return verdicts;
  }

  private Duration ahead(Instant arrival, List<Observation> observations) {
    return observations.stream()
        .filter(Observation::ownTime)
        .map(observation -> Duration.between(arrival, observation.time()))
        .filter(off -> !off.isNegative() && off.compareTo(within) <= 0)
        .max(Duration::compareTo)
        .orElse(Duration.ZERO);
  }

  private Verdict judge(Instant arrival, Observation observation, Duration ahead) {
    Instant time = observation.time();
    Duration off = Duration.between(arrival, time);
    if (off.abs().compareTo(within) > 0) {
      return new Verdict.Refused(TimeOff.words(time, off, within));
    }
    Reading known = taken.get(time);
    if (known != null) {
      return observation.hasValuesOf(known)
          ? new Verdict.Again(
              "a reading of its time, %s, with its values was taken".formatted(time))
          : new Verdict.Refused(
              "a reading of its time, %s, was taken with other values".formatted(time));
    }
    Instant stamped = time.minus(ahead);
    if (stamped.isBefore(last)) {
      return new Verdict.Refused(
          "its time, %s, is %s before that of the last reading"
              .formatted(time, TimeOff.span(Duration.between(stamped, last))));
    }
    return next(observation.at(stamped), observation);
  }

  private Verdict next(Reading reading, Observation observation) {
    last = reading.time();
    if (observation.ownTime()) {
      taken.put(observation.time(), observation.reading());
      if (taken.size() > REMEMBERED) {
        taken.pollFirstEntry();
      }
    }
    return new Verdict.Next(reading);
  }
}
