package org.restpoint.acquisition.probe;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.restpoint.acquisition.day.Day;
import org.restpoint.acquisition.day.Place;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.config.station.Care;
import org.restpoint.stability.calibration.Reason;

/**
 * Keeps an electrode's day as it is told of it, and tells what becomes due in it. Steps that were
 * skipped count only where the station file asks for care: elsewhere nobody tells of them.
 */
final class DayBook {

  /** How long an electrode soaks unless somebody says otherwise: common practice. */
  private static final Duration SOAK = Duration.ofMinutes(20);

  private final Optional<Care> care;
  private Day day;

  DayBook(ProbeSettings settings, ProbeMemory memory) {
    this.care = settings.care();
    this.day = memory.day().orElseGet(() -> Day.unknown(Instant.EPOCH));
  }

  Day day() {
    return day;
  }

  /** How long it soaks unless an instruction says otherwise. */
  Duration usualSoak() {
    return care.map(Care::soak).orElse(SOAK);
  }

  /** Begins, or goes on after a restart; what came due meanwhile is told now. */
  Optional<Reason> begin(Instant now) {
    if (day.place() == Place.UNKNOWN) {
      day = Day.unknown(now);
    }
    return due().filter(due -> !due.isAfter(now)).flatMap(due -> happen(now));
  }

  Optional<Instant> due() {
    return day.due(care);
  }

  /** What was due has come; what a person has to be told of it beside the state. */
  Optional<Reason> happen(Instant now) {
    Day before = day;
    day = day.happen(now);
    if (day.dried() && !before.dried()) {
      return Optional.of(tipDry(before.since()));
    }
    return before.place() == Place.STORED
        ? Optional.of(longRest(before.since()))
        : Optional.empty();
  }

  void soak(Instant now, Instruction.Soak soak) {
    day = day.soak(now, soak.span().orElseGet(this::usualSoak));
  }

  /** It stands in a solution in which it is about to be read. */
  List<String> into(Instant now, Purpose purpose) {
    List<String> skipped = care.isPresent() ? day.skipped(now) : List.of();
    if (purpose instanceof Purpose.OfStandard of) {
      day = day.into(now, Words.standard(of.standard().name()), true, usualSoak());
    } else if (purpose instanceof Purpose.OfCheck of) {
      boolean standard = of.check() instanceof Check.OfStandard;
      day = day.into(now, of.check().place(), standard, usualSoak());
    } else {
      day = day.into(now, "the sample", false, usualSoak());
    }
    return skipped;
  }

  void rinsed(Instant now, Instruction.Rinsed rinsed) {
    day = day.rinse(now);
    rinsed.into().ifPresent(name -> day = day.into(now, Words.standard(name), true, usualSoak()));
  }

  void store(Instant now, Instruction.Store store) {
    Duration longest = care.map(Care::longRest).orElse(Duration.ofDays(14));
    day = day.store(now, store.span().filter(span -> span.compareTo(longest) > 0).isPresent());
  }

  /** Soaking is given up, if it soaks. */
  void cancelSoak(Instant now) {
    if (isSoaking()) {
      day = day.soakGivenUp(now);
    }
  }

  /** Whether it has soaked for as long as it is to. */
  boolean hasSoaked(Instant now) {
    return day.isSoaked(now);
  }

  boolean isSoaking() {
    return day.place() == Place.SOAKING;
  }

  /** Another electrode: nothing is known of its day. */
  void replaced(Instant now) {
    day = Day.unknown(now);
  }

  void clockPutBack(Instant before, Instant now) {
    day = day.moved(before, now);
  }

  private Reason tipDry(Instant since) {
    return new Reason(
        "tip-dry",
        "the tip has been out of solution since %s, longer than %s"
            .formatted(since, Words.span(care.orElseThrow().dryAfter())),
        "Put it into its soaking solution, then: soak. Results read without it are flagged.");
  }

  private static Reason longRest(Instant since) {
    return new Reason(
        "long-rest",
        "the electrode has been in storage since %s".formatted(since),
        "Put it into long-term storage as its maker says: rinsed, blotted and capped.");
  }
}
