package org.restpoint.config.file;

import java.time.Duration;
import java.util.List;
import org.restpoint.config.station.OwnTimes;

/** Reads how far times that come with readings are trusted. */
final class OwnTimesReader {

  /** The keys of it. */
  static final List<String> KEYS = List.of("time-within", "late-by");

  private static final Duration USUAL_WITHIN = Duration.ofMinutes(5);
  private static final Duration USUAL_LATE_BY = Duration.ofSeconds(2);
  private static final Allowed LATE_BY = Allowed.from(Measure.TIME, "0 s", "1 h");

  private OwnTimesReader() {}

  static OwnTimes read(Section keys) {
    return new OwnTimes(
        keys.find("time-within").flatMap(Allowed.WAIT::span).orElse(USUAL_WITHIN),
        keys.find("late-by").flatMap(LATE_BY::span).orElse(USUAL_LATE_BY));
  }
}
