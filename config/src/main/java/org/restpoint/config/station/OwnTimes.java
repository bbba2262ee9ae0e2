package org.restpoint.config.station;

import java.time.Duration;

/**
 * How far times that come with readings are trusted.
 *
 * @param within how far one may be off from the clock, either way
 * @param lateBy how long after their time readings may come and are still taken in its order; the
 *     station waits so long with everything
 */
public record OwnTimes(Duration within, Duration lateBy) {}
