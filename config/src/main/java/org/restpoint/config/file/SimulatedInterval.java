package org.restpoint.config.file;

import java.time.Duration;
import java.util.Optional;

/**
 * How often a simulated link sends, which other times must not be shorter than.
 *
 * @param span the interval
 * @param understood whether it is the file's or the default, so that others can be held against it
 * @param written the interval as a message shows it
 */
record SimulatedInterval(Duration span, boolean understood, String written) {

  private static final Allowed INTERVAL = Allowed.from(Measure.TIME, "1 ms", "1 d");
  private static final Duration USUAL = Duration.ofSeconds(1);
  private static final Duration USUAL_NO_DATA = Duration.ofSeconds(30);

  static SimulatedInterval read(Section keys) {
    Optional<Entry> entry = keys.find("interval");
    Optional<Duration> read = entry.flatMap(INTERVAL::span).filter(span -> whole(entry, span));
    return new SimulatedInterval(
        read.orElse(USUAL),
        read.isPresent() || entry.isEmpty(),
        entry.map(Entry::found).orElse("1 s"));
  }

  private static boolean whole(Optional<Entry> entry, Duration span) {
    boolean whole = span.equals(Duration.ofMillis(span.toMillis()));
    if (!whole) {
      entry.ifPresent(value -> value.refuse("a whole number of milliseconds"));
    }
    return whole;
  }

  /** A span that is not shorter than the interval; tells one that is. */
  Optional<Duration> orLonger(Entry entry, Allowed allowed) {
    return checked(entry, allowed, "not shorter", 0);
  }

  /** When silence is told: after 30 s, or three intervals where that is longer, or as it says. */
  Duration noDataAfter(Section keys) {
    Duration three = span.multipliedBy(3);
    Duration usual = three.compareTo(USUAL_NO_DATA) > 0 ? three : USUAL_NO_DATA;
    return keys.find("no-data-after")
        .flatMap(entry -> checked(entry, Allowed.WAIT, "longer", 1))
        .orElse(usual);
  }

  private Optional<Duration> checked(Entry entry, Allowed allowed, String how, int least) {
    Optional<Duration> read = allowed.span(entry);
    Optional<Duration> fitting = read.filter(time -> time.compareTo(span) >= least);
    if (read.isPresent() && fitting.isEmpty() && understood) {
      entry.refuse("a time %s than interval (%s)".formatted(how, written));
    }
    return fitting;
  }
}
