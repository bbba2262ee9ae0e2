package org.restpoint.config.file;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.config.station.Settle;
import org.restpoint.config.station.SettleRule;

/** Reads when a potential is at rest. */
final class SettleReader {

  private static final List<String> LIMITS = List.of("not-before", "give-up-after");

  /** The keys of a rule of rest and its limits of time. */
  static final List<String> KEYS =
      Stream.of(SettleRuleReader.KEYS, List.of(SettleRuleReader.LEARN), LIMITS)
          .flatMap(List::stream)
          .toList();

  private static final Allowed NOT_BEFORE = Allowed.from(Measure.TIME, "0 s", "1 d");
  private static final Allowed GIVE_UP = Allowed.from(Measure.TIME, "10 ms", "1 d");

  /** What holds where the file says nothing. */
  static final Settle USUAL =
      new Settle(SettleRuleReader.USUAL, Duration.ZERO, Duration.ofMinutes(10));

  private SettleReader() {}

  static Settle read(Entry entry) {
    return entry.section(SettleRuleReader.A_RULE).map(SettleReader::read).orElse(USUAL);
  }

  private static Settle read(Section keys) {
    Optional<Duration> given = keys.find("give-up-after").flatMap(GIVE_UP::span);
    Duration giveUp = given.orElse(USUAL.giveUpAfter());
    boolean understood = given.isPresent() || !keys.has("give-up-after");
    String limit = keys.find("give-up-after").map(Entry::found).orElse("10 min");
    Optional<SettleRuleReader.TimeLimit> within =
        understood ? Optional.of(new SettleRuleReader.TimeLimit(giveUp, limit)) : Optional.empty();
    SettleRule rule = new SettleRuleReader(within).read(keys, LIMITS);
    Duration notBefore =
        keys.find("not-before").flatMap(NOT_BEFORE::span).orElse(USUAL.notBefore());
    if (understood && notBefore.compareTo(giveUp) >= 0) {
      keys.find("not-before")
          .ifPresent(value -> value.refuse("a time before give-up-after (" + limit + ")"));
    }
    return new Settle(rule, notBefore, giveUp);
  }
}
