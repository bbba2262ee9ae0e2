package org.restpoint.config.file;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.Settle;
import org.restpoint.config.station.Settle.Rule;

/** Reads when a potential is at rest. */
final class SettleReader {

  /** The keys of a rule of rest. */
  static final List<String> KEYS =
      List.of("rule", "readings", "within", "not-before", "give-up-after");

  private static final long FEWEST = 2;
  private static final long MOST = 10_000;
  private static final int USUAL_READINGS = 10;
  private static final double USUAL_MILLIVOLTS = 0.1;
  private static final Allowed WITHIN = Allowed.above(Measure.POTENTIAL, "0 mV", "100 mV");
  private static final Allowed NOT_BEFORE = Allowed.from(Measure.TIME, "0 s", "1 d");
  private static final Allowed GIVE_UP = Allowed.from(Measure.TIME, "10 ms", "1 d");

  /** What holds where the file says nothing. */
  static final Settle USUAL =
      new Settle(
          new Rule.Consecutive(USUAL_READINGS, USUAL_MILLIVOLTS),
          Duration.ZERO,
          Duration.ofMinutes(10));

  private SettleReader() {}

  static Settle read(Entry entry) {
    return entry
        .section("a mapping like { readings: 10, within: 0.1 mV }")
        .map(SettleReader::read)
        .orElse(USUAL);
  }

  private static Settle read(Section keys) {
    keys.only(KEYS);
    keys.find("rule").ifPresent(value -> value.word(List.of("consecutive")));
    int readings =
        keys.find("readings")
            .flatMap(value -> value.whole(FEWEST, MOST))
            .map(Long::intValue)
            .orElse(USUAL_READINGS);
    double within = keys.find("within").flatMap(WITHIN::number).orElse(USUAL_MILLIVOLTS);
    Duration notBefore =
        keys.find("not-before").flatMap(NOT_BEFORE::span).orElse(USUAL.notBefore());
    Optional<Duration> given = keys.find("give-up-after").flatMap(GIVE_UP::span);
    Duration giveUp = given.orElse(USUAL.giveUpAfter());
    boolean understood = given.isPresent() || !keys.has("give-up-after");
    if (understood && notBefore.compareTo(giveUp) >= 0) {
      String limit = keys.find("give-up-after").map(Entry::found).orElse("10 min");
      keys.find("not-before")
          .ifPresent(value -> value.refuse("a time before give-up-after (" + limit + ")"));
    }
    return new Settle(new Rule.Consecutive(readings, within), notBefore, giveUp);
  }
}
