package org.restpoint.config.file;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.config.station.SimulatedFault;

/** Reads what goes wrong on a simulated link, and when. */
final class SimulatedFaultsReader {

  private static final List<String> TIME_KEYS = List.of("fault", "at", "for", "every");
  private static final List<String> OF_LINE = List.of("silent", "unplugged", "flood");
  private static final List<String> OF_ELECTRODE =
      List.of(
          "open-circuit", "spikes", "noise-burst", "air-bubble", "coated-membrane", "offset-jump");

  /** All faults. */
  static final List<String> KINDS = Stream.concat(OF_LINE.stream(), OF_ELECTRODE.stream()).toList();

  /** The keys of all faults, each once. */
  static final List<String> KEYS =
      Stream.concat(
              TIME_KEYS.stream(), KINDS.stream().flatMap(kind -> ownKeys(kind).stream()).distinct())
          .toList();

  private static final String A_LIST =
      "a list of faults, e.g. [{ fault: silent, at: 10 min, for: 2 min }]";
  private static final String A_FAULT = "a mapping like { fault: silent, at: 10 min, for: 2 min }";
  private static final String AN_END = "how long it lasts, as it comes again";
  private static final int MOST_FAULTS = 100;
  private static final int MOST_TIMES = 1000;

  private static final Allowed AT = Allowed.from(Measure.TIME, "0 s", "366 d");
  private static final Allowed SPAN = Allowed.from(Measure.TIME, "1 ms", "366 d");
  private static final Allowed POTENTIAL = Allowed.from(Measure.POTENTIAL, "-10000 mV", "10000 mV");
  private static final Allowed SIZE = Allowed.from(Measure.POTENTIAL, "0 mV", "10000 mV");
  private static final Allowed SHARE = Allowed.from(Measure.SHARE, "0 %", "100 %");
  private static final PlainNumber SLOWER =
      new PlainNumber(1, true, 1000, "a number from 1 to 1000, e.g. 10");

  private final SimulatedInterval interval;
  private final List<String> kinds;
  private final String because;

  /**
   * A reader for one link.
   *
   * @param thermometer whether only the line can fail
   */
  SimulatedFaultsReader(SimulatedInterval interval, boolean thermometer) {
    this.interval = interval;
    this.kinds = thermometer ? OF_LINE : KINDS;
    this.because = thermometer ? ", as a thermometer has no electrode" : "";
  }

  private static List<String> ownKeys(String kind) {
    return switch (kind) {
      case "flood" -> List.of("times");
      case "open-circuit" -> List.of("potential", "wander");
      case "spikes" -> List.of("size", "share");
      case "noise-burst" -> List.of("noise");
      case "air-bubble" -> List.of("jump", "slower");
      case "coated-membrane" -> List.of("slower");
      case "offset-jump" -> List.of("jump");
      default -> List.of();
    };
  }

  /** The faults that were understood. */
  List<SimulatedFault> read(Entry list) {
    List<Entry> items = list.items(A_LIST);
    if (items.size() > MOST_FAULTS) {
      list.refuse("1 to " + MOST_FAULTS + " faults", Integer.toString(items.size()));
      return List.of();
    }
    return items.stream()
        .flatMap(item -> item.section(A_FAULT).flatMap(this::fault).stream())
        .toList();
  }

  private Optional<SimulatedFault> fault(Section keys) {
    Optional<String> kind = keys.find("fault").flatMap(value -> value.word(kinds, because));
    if (kind.isEmpty()) {
      keys.only(KEYS);
      keys.need("fault", "one of " + String.join(", ", kinds));
    } else {
      List<String> known = Stream.concat(TIME_KEYS.stream(), ownKeys(kind.get()).stream()).toList();
      List<String> foreign = KEYS.stream().filter(key -> !known.contains(key)).toList();
      keys.only(known, foreign, "it is another fault's: leave it out");
    }
    Optional<SimulatedFault.Kind> what = kind.map(word -> kind(word, keys));
    Optional<Duration> at =
        keys.need("at", "when it begins, from the start on: " + Measure.TIME.expected())
            .flatMap(AT::span);
    Optional<Duration> span = keys.find("for").flatMap(value -> interval.orLonger(value, SPAN));
    Optional<Duration> every = keys.find("every").flatMap(SPAN::span);
    if (keys.has("every")) {
      keys.need("for", AN_END);
      every = every.filter(again -> comesAgainAfter(again, span, keys));
    }
    Optional<Duration> again = every;
    return what.flatMap(w -> at.map(begins -> new SimulatedFault(w, begins, span, again)));
  }

  private static boolean comesAgainAfter(Duration every, Optional<Duration> span, Section keys) {
    boolean longer = span.filter(lasts -> every.compareTo(lasts) <= 0).isEmpty();
    if (!longer) {
      String lasts = keys.find("for").map(Entry::found).orElse("");
      keys.find("every").ifPresent(v -> v.refuse("a time longer than for (" + lasts + ")"));
    }
    return longer && span.isPresent();
  }

  private static SimulatedFault.Kind kind(String word, Section keys) {
    return switch (word) {
      case "silent" -> new SimulatedFault.Silent();
      case "unplugged" -> new SimulatedFault.Unplugged();
      case "flood" ->
          new SimulatedFault.Flood(
              keys.find("times")
                  .flatMap(value -> value.whole(2, MOST_TIMES))
                  .map(Long::intValue)
                  .orElse(100));
      case "open-circuit" ->
          new SimulatedFault.OpenCircuit(
              number(keys, "potential", POTENTIAL, 1000), number(keys, "wander", SIZE, 200));
      case "spikes" ->
          new SimulatedFault.Spikes(
              number(keys, "size", SIZE, 50), number(keys, "share", SHARE, 5));
      case "noise-burst" -> new SimulatedFault.NoiseBurst(number(keys, "noise", SIZE, 5));
      case "air-bubble" ->
          new SimulatedFault.AirBubble(number(keys, "jump", POTENTIAL, -25), slower(keys));
      case "coated-membrane" -> new SimulatedFault.CoatedMembrane(slower(keys));
      default -> new SimulatedFault.OffsetJump(number(keys, "jump", POTENTIAL, 10));
    };
  }

  private static double number(Section keys, String key, Allowed allowed, double usual) {
    return keys.find(key).flatMap(allowed::number).orElse(usual);
  }

  private static double slower(Section keys) {
    return keys.find("slower").flatMap(SLOWER::read).orElse(10.0);
  }
}
