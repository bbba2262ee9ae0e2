package org.restpoint.acquisition.event;

import java.time.Instant;
import java.util.OptionalDouble;

/**
 * A potential on its way to rest; at most once a second.
 *
 * @param station the station's name
 * @param probe the probe's name
 * @param time the latest reading's
 * @param readings readings so far
 * @param elapsedSeconds since the beginning
 * @param latestMillivolts the latest reading
 * @param spreadMillivolts spread of the rule's last readings
 * @param driftMillivoltsPerMinute drift over the rule's last readings
 */
public record Progress(
    String station,
    String probe,
    Instant time,
    long readings,
    double elapsedSeconds,
    double latestMillivolts,
    double spreadMillivolts,
    OptionalDouble driftMillivoltsPerMinute)
    implements Event {}
