package org.restpoint.config.file;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.Routine;
import org.restpoint.config.station.Settle;

/** Reads who says when a probe is read. */
final class RoutineReader {

  /** The keys of a routine that is a mapping. */
  static final List<String> KINDS = List.of("every", "at-rest");

  /** The keys of at-rest. */
  static final List<String> AT_REST_KEYS = List.of("gap-after");

  private static final String A_ROUTINE = "instructed, at-rest, or a mapping with every or at-rest";
  private static final Allowed INTERVAL = Allowed.from(Measure.TIME, "100 ms", "366 d");
  private static final Duration USUAL_GAP = Duration.ofMinutes(5);

  /** A decision comes at the latest this long before the next interval begins. */
  private static final Duration LATEST_BEFORE_THE_NEXT = Duration.ofMillis(1);

  private RoutineReader() {}

  static Routine read(Entry entry) {
    if (entry.isMapping()) {
      return entry.section(A_ROUTINE).flatMap(RoutineReader::read).orElseGet(RoutineReader::usual);
    }
    if (entry.quietText().isEmpty()) {
      entry.refuse(A_ROUTINE);
      return usual();
    }
    return entry
        .word(List.of("instructed", "at-rest"), ", or a mapping with every or at-rest")
        .filter(word -> word.equals("at-rest"))
        .<Routine>map(word -> new Routine.EachRest(USUAL_GAP))
        .orElseGet(RoutineReader::usual);
  }

  private static Routine usual() {
    return new Routine.Instructed();
  }

  private static Optional<Routine> read(Section keys) {
    keys.only(KINDS);
    Optional<String> kind = keys.kind(KINDS);
    Optional<Routine> every =
        keys.find("every").flatMap(INTERVAL::span).map(Routine.EachInterval::new);
    Optional<Routine> atRest = keys.find("at-rest").flatMap(RoutineReader::atRest);
    return kind.flatMap(any -> every.or(() -> atRest));
  }

  private static Optional<Routine> atRest(Entry entry) {
    Optional<Section> section = entry.section("a mapping with gap-after");
    section.ifPresent(keys -> keys.only(AT_REST_KEYS));
    return section.map(
        keys ->
            new Routine.EachRest(keys.find("gap-after").flatMap(INTERVAL::span).orElse(USUAL_GAP)));
  }

  /** Tells an interval that is over before the first decision may come. */
  static void checkRoom(Section electrode, Settle settle, Routine routine) {
    if (!(routine instanceof Routine.EachInterval each)) {
      return;
    }
    Duration longest = each.interval().minus(LATEST_BEFORE_THE_NEXT);
    Duration window = settle.rule().shortestWait();
    if (window.compareTo(longest) >= 0) {
      refuse(electrode, "the window of settle (" + span(window) + ")");
      return;
    }
    if (settle.notBefore().compareTo(longest) < 0) {
      return;
    }
    String limit =
        electrode
            .find("settle")
            .flatMap(value -> value.inside("not-before"))
            .map(Entry::found)
            .orElseGet(() -> settle.notBefore().toString());
    refuse(electrode, "settle.not-before (" + limit + ")");
  }

  private static void refuse(Section electrode, String shorter) {
    electrode
        .find("routine")
        .flatMap(value -> value.inside("every"))
        .ifPresent(every -> every.refuse("a time more than 1 ms longer than " + shorter));
  }

  private static String span(Duration span) {
    return span.toMillisPart() == 0 ? span.toSeconds() + " s" : span.toMillis() + " ms";
  }
}
