package org.restpoint.acquisition.event;

import java.time.Instant;
import java.util.OptionalDouble;

/**
 * A raw reading as it arrived.
 *
 * @param station the station's name
 * @param probe the probe's name
 * @param time when it was taken
 * @param millivolts the potential, where there is one
 * @param celsius the temperature, where there is one
 */
public record RawReading(
    String station, String probe, Instant time, OptionalDouble millivolts, OptionalDouble celsius)
    implements Event {}
