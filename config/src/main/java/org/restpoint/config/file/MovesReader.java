package org.restpoint.config.file;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.config.station.Moves;

/** Reads how it is known that an electrode was put into the next cup. */
final class MovesReader {

  /** The keys of moves that is a mapping. */
  static final List<String> KINDS = List.of("by-itself");

  /** The keys of by-itself. */
  static final List<String> KEYS =
      List.of("step", "out-of-solution", "readings", "calm", "calm-for", "not-seen-after");

  private static final String MOVES = "told, or a mapping with by-itself";
  private static final String SIGNS = "a mapping with step, out-of-solution or both";
  private static final Allowed POTENTIAL = Allowed.above(Measure.POTENTIAL, "0 mV", "1000 mV");
  private static final Allowed CALM_FOR = Allowed.from(Measure.TIME, "1 s", "10 min");
  private static final Allowed NOT_SEEN = Allowed.from(Measure.TIME, "10 s", "1 d");

  /** Fewer are a spike. */
  private static final int READINGS = 3;

  /** An electrode that answers is within this for the span below; one in air is not. Our choice. */
  private static final double CALM_MILLIVOLTS = 10;

  private static final Duration USUAL_CALM = Duration.ofSeconds(5);
  private static final Duration USUAL_WAIT = Duration.ofMinutes(3);

  private MovesReader() {}

  static Moves read(Entry entry) {
    if (entry.isMapping()) {
      return entry.section(MOVES).flatMap(MovesReader::read).orElseGet(Moves.Told::new);
    }
    if (entry.quietText().isEmpty()) {
      entry.refuse(MOVES);
    } else {
      entry.word(List.of("told"), ", or a mapping with by-itself");
    }
    return new Moves.Told();
  }

  private static Optional<Moves> read(Section keys) {
    keys.only(KINDS);
    return keys.kind(KINDS)
        .flatMap(keys::find)
        .flatMap(value -> value.section(SIGNS))
        .flatMap(MovesReader::byItself);
  }

  private static Optional<Moves> byItself(Section keys) {
    keys.only(KEYS);
    OptionalDouble step = potential(keys, "step");
    OptionalDouble air = potential(keys, "out-of-solution");
    int readings =
        keys.find("readings")
            .flatMap(value -> value.whole(2, 100))
            .orElse((long) READINGS)
            .intValue();
    double calm = keys.find("calm").flatMap(POTENTIAL::number).orElse(CALM_MILLIVOLTS);
    Duration calmFor = keys.find("calm-for").flatMap(CALM_FOR::span).orElse(USUAL_CALM);
    Duration wait = keys.find("not-seen-after").flatMap(NOT_SEEN::span).orElse(USUAL_WAIT);
    if (keys.has("step") || keys.has("out-of-solution")) {
      return step.isEmpty() && air.isEmpty()
          ? Optional.empty()
          : Optional.of(new Moves.ByItself(step, air, readings, calm, calmFor, wait));
    }
    if (!keys.meant("step") && !keys.meant("out-of-solution")) {
      keys.self().refuse("step, out-of-solution or both, by which a move is known", "neither");
    }
    return Optional.empty();
  }

  private static OptionalDouble potential(Section keys, String key) {
    return keys.find(key)
        .flatMap(POTENTIAL::number)
        .map(OptionalDouble::of)
        .orElseGet(OptionalDouble::empty);
  }
}
