package org.restpoint.config.file;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.Care;
import org.restpoint.config.station.Routine;

/** Reads how an electrode is looked after at the bench. */
final class CareReader {

  /** The keys of care. */
  static final List<String> KEYS = List.of("soak", "dry-after", "long-rest");

  static final String CARE = "usual, or a mapping with " + String.join(", ", KEYS);

  /** Common practice: about 20 min first thing in the morning. */
  private static final Duration SOAK = Duration.ofMinutes(20);

  /** Our own choice: rinsing and blotting takes a minute, and the tip is never to be dry. */
  private static final Duration DRY_AFTER = Duration.ofMinutes(5);

  /** Common practice: long-term storage beyond two weeks. */
  private static final Duration LONG_REST = Duration.ofDays(14);

  private static final Care USUAL = new Care(SOAK, DRY_AFTER, LONG_REST);

  private static final Allowed SOAKING = Allowed.from(Measure.TIME, "1 s", "7 d");
  private static final Allowed DRYING = Allowed.from(Measure.TIME, "1 s", "1 d");
  private static final Allowed RESTING = Allowed.from(Measure.TIME, "1 d", "366 d");

  private CareReader() {}

  /** The care asked for; empty where it was refused. */
  static Optional<Care> read(Entry entry, Routine routine) {
    if (!(routine instanceof Routine.Instructed)) {
      entry.refuse("no care for a probe in a stream, where nobody tells what is done with it");
      return Optional.empty();
    }
    if (entry.isMapping()) {
      return entry.section(CARE).map(CareReader::read);
    }
    if (entry.quietText().isEmpty()) {
      entry.refuse(CARE);
      return Optional.empty();
    }
    return entry
        .word(List.of("usual"), ", or a mapping with " + String.join(", ", KEYS))
        .map(word -> USUAL);
  }

  private static Care read(Section keys) {
    keys.only(KEYS);
    return new Care(
        keys.find("soak").flatMap(SOAKING::span).orElse(SOAK),
        keys.find("dry-after").flatMap(DRYING::span).orElse(DRY_AFTER),
        keys.find("long-rest").flatMap(RESTING::span).orElse(LONG_REST));
  }
}
