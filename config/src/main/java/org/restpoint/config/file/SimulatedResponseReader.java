package org.restpoint.config.file;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.Simulation.Response;

/** Reads how a simulated electrode comes to rest. */
final class SimulatedResponseReader {

  private static final String FILM = "film";
  private static final String MEMBRANE = "membrane";
  private static final String HYPERBOLA = "hyperbola";
  private static final String TWO_EXPONENTIALS = "two-exponentials";

  /** The models. */
  static final List<String> MODELS = List.of(FILM, MEMBRANE, HYPERBOLA, TWO_EXPONENTIALS);

  private static final List<String> SLOW_KEYS = List.of("slow-time-constant", "slow-share");
  private static final Allowed TIME_CONSTANT = Allowed.from(Measure.TIME, "0.01 ms", "1 d");
  private static final Allowed SLOW_SHARE = Allowed.from(Measure.SHARE, "0 %", "100 %");

  /** Usual times of electrodes, from memory of the trade. */
  private static final Duration USUAL_FILM = Duration.ofSeconds(8);

  private static final Duration USUAL_MEMBRANE = Duration.ofMillis(10);
  private static final Duration USUAL_HYPERBOLA = Duration.ofSeconds(3);
  private static final Duration USUAL_QUICK = Duration.ofSeconds(5);
  private static final int USUAL_TIMES_SLOWER = 10;
  private static final double USUAL_SLOW_PERCENT = 15;

  private SimulatedResponseReader() {}

  /**
   * Reads it, and tells keys of the section that are unknown.
   *
   * @param known all keys the section may have
   */
  static Response read(Section keys, List<String> known) {
    Optional<String> word = keys.find("response").flatMap(value -> value.word(MODELS));
    boolean unknown = word.isEmpty() && keys.has("response");
    String model = word.orElse(FILM);
    if (unknown || model.equals(TWO_EXPONENTIALS)) {
      keys.only(known);
    } else {
      List<String> own = new ArrayList<>(known);
      own.removeAll(SLOW_KEYS);
      keys.only(own, SLOW_KEYS, "only response: two-exponentials has a slow part");
    }
    Optional<Duration> given = keys.find("time-constant").flatMap(TIME_CONSTANT::span);
    return switch (model) {
      case MEMBRANE -> new Response.Membrane(given.orElse(USUAL_MEMBRANE));
      case HYPERBOLA -> new Response.Hyperbola(given.orElse(USUAL_HYPERBOLA));
      case TWO_EXPONENTIALS -> twoExponentials(keys, given);
      default -> new Response.Film(given.orElse(USUAL_FILM));
    };
  }

  private static Response twoExponentials(Section keys, Optional<Duration> given) {
    boolean understood = given.isPresent() || !keys.has("time-constant");
    Duration quick = given.orElse(USUAL_QUICK);
    Optional<Duration> slow = keys.find("slow-time-constant").flatMap(TIME_CONSTANT::span);
    if (understood && slow.filter(time -> time.compareTo(quick) <= 0).isPresent()) {
      String shown = keys.find("time-constant").map(Entry::found).orElse("5 s");
      keys.find("slow-time-constant")
          .ifPresent(value -> value.refuse("a time longer than time-constant (" + shown + ")"));
    }
    double share = keys.find("slow-share").flatMap(SLOW_SHARE::number).orElse(USUAL_SLOW_PERCENT);
    return new Response.TwoExponentials(
        quick, slow.orElse(quick.multipliedBy(USUAL_TIMES_SLOWER)), share);
  }
}
