package org.restpoint.config.file;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.config.station.SettleRule;
import org.restpoint.config.station.SettleRule.Within;

/** Reads a rule of rest, by itself or in a combination. */
final class SettleRuleReader {

  /** What a rule looks like. */
  static final String A_RULE = "a mapping like { rule: forecast, within: 1 mV }";

  private static final String CONSECUTIVE = "consecutive";
  private static final String DRIFT = "drift";
  private static final String FORECAST = "forecast";
  private static final String ALL_OF = "all-of";
  private static final String ANY_OF = "any-of";

  /** The kinds of rules. */
  static final List<String> KINDS = List.of(CONSECUTIVE, DRIFT, FORECAST, ALL_OF, ANY_OF);

  private static final List<String> CONSECUTIVE_KEYS = List.of("readings", "within", "for");
  private static final List<String> DRIFT_KEYS =
      List.of("below", "over", "standard-errors", "readings-at-least");
  private static final List<String> FORECAST_KEYS = List.of("within");
  private static final List<String> COMBINATION_KEYS = List.of("rules");

  private static final Map<String, List<String>> KEYS_OF =
      Map.of(
          CONSECUTIVE, CONSECUTIVE_KEYS,
          DRIFT, DRIFT_KEYS,
          FORECAST, FORECAST_KEYS,
          ALL_OF, COMBINATION_KEYS,
          ANY_OF, COMBINATION_KEYS);

  /** The key of a forecast that stands by itself. */
  static final String LEARN = "learn";

  /** The keys of all kinds in a combination, each once. */
  static final List<String> KEYS =
      Stream.of(List.of("rule"), CONSECUTIVE_KEYS, DRIFT_KEYS, FORECAST_KEYS, COMBINATION_KEYS)
          .flatMap(List::stream)
          .distinct()
          .toList();

  private static final String OF_ANOTHER_RULE = "it is another rule's: leave it out or change rule";
  private static final String LEARNS_BY_ITSELF =
      "only a forecast that is no part of a combination learns: leave it out";

  private static final int MOST_READINGS = 10_000;
  private static final int USUAL_READINGS = 10;
  private static final int FEWEST_RULES = 2;
  private static final int MOST_RULES = 8;

  /** A combination in a combination, and no deeper: what a person still reads at a glance. */
  private static final int DEEPEST = 2;

  private static final Allowed MILLIVOLTS = Allowed.above(Measure.TOLERANCE, "0 mV", "100 mV");
  private static final Allowed PERCENT = Allowed.above(Measure.SHARE, "0 %", "50 %");
  private static final Allowed SPAN = Allowed.from(Measure.TIME, "0 s", "1 d");
  private static final Allowed OVER = Allowed.from(Measure.TIME, "100 ms", "1 d");
  private static final Allowed BELOW =
      Allowed.above(Measure.DRIFT_PER_MINUTE, "0 mV/min", "100 mV/min");

  private static final Within USUAL_TOLERANCE = new Within.Millivolts(0.1);
  private static final Duration USUAL_OVER = Duration.ofMinutes(1);

  /** About 4 % of the concentration of a monovalent ion. Our choice. */
  private static final Within USUAL_FORECAST = new Within.Millivolts(1);

  private static final int USUAL_STANDARD_ERRORS = 1;
  private static final int MOST_STANDARD_ERRORS = 10;
  private static final int USUAL_READINGS_OF_DRIFT = 5;

  /** The rule that holds where the file says nothing. */
  static final SettleRule USUAL = new SettleRule.Forecast(USUAL_FORECAST, true);

  private final Optional<TimeLimit> giveUp;

  /**
   * A time that every window must be shorter than.
   *
   * @param time the time
   * @param written as a message shows it
   */
  record TimeLimit(Duration time, String written) {}

  SettleRuleReader(Optional<TimeLimit> giveUp) {
    this.giveUp = giveUp;
  }

  /**
   * The rule of a section.
   *
   * @param others the section's keys that are no rule's
   */
  SettleRule read(Section keys, List<String> others) {
    return read(keys, others, 1);
  }

  private SettleRule read(Section keys, List<String> others, int depth) {
    Optional<String> word = keys.find("rule").flatMap(value -> value.word(KINDS));
    List<String> learn = depth == 1 ? List.of(LEARN) : List.of();
    if (word.isEmpty() && keys.has("rule")) {
      keys.only(joined(List.of(KEYS, learn, others)));
      return USUAL;
    }
    String kind = word.orElse(FORECAST);
    List<String> own = keysOf(kind);
    List<String> known =
        joined(List.of(List.of("rule"), own, kind.equals(FORECAST) ? learn : List.of(), others));
    Map<String, String> foreign = new HashMap<>();
    for (String key : KEYS) {
      foreign.put(key, word.isPresent() ? OF_ANOTHER_RULE : ownedBy(key));
    }
    foreign.put(LEARN, depth == 1 ? OF_ANOTHER_RULE : LEARNS_BY_ITSELF);
    known.forEach(foreign::remove);
    keys.only(known, foreign);
    return switch (kind) {
      case CONSECUTIVE -> consecutive(keys);
      case DRIFT -> drift(keys);
      case ALL_OF -> combination(keys, depth).<SettleRule>map(SettleRule.AllOf::new).orElse(USUAL);
      case ANY_OF -> combination(keys, depth).<SettleRule>map(SettleRule.AnyOf::new).orElse(USUAL);
      default -> forecast(keys, depth == 1);
    };
  }

  private static List<String> joined(List<List<String>> parts) {
    return parts.stream().flatMap(List::stream).toList();
  }

  /** Where no rule is named, a key of another one than the usual tells which to name. */
  private static String ownedBy(String key) {
    List<String> owners = KINDS.stream().filter(kind -> keysOf(kind).contains(key)).toList();
    return "it belongs to rule %s: name the rule, or leave it out"
        .formatted(String.join(" or ", owners));
  }

  private static List<String> keysOf(String kind) {
    return KEYS_OF.getOrDefault(kind, List.of());
  }

  private SettleRule consecutive(Section keys) {
    return new SettleRule.Consecutive(
        keys.find("readings")
            .flatMap(value -> value.whole(2, MOST_READINGS))
            .map(Long::intValue)
            .orElse(USUAL_READINGS),
        keys.find("within").flatMap(SettleRuleReader::within).orElse(USUAL_TOLERANCE),
        keys.find("for").flatMap(value -> window(value, SPAN)).orElse(Duration.ZERO));
  }

  private static Optional<Within> within(Entry entry) {
    return entry.quietText().orElse("").strip().endsWith("%")
        ? PERCENT.number(entry).map(Within.Percent::new)
        : MILLIVOLTS.number(entry).map(Within.Millivolts::new);
  }

  private SettleRule drift(Section keys) {
    Optional<Double> below =
        keys.need("below", Measure.DRIFT_PER_MINUTE.expected()).flatMap(BELOW::number);
    Duration over = keys.find("over").flatMap(value -> window(value, OVER)).orElse(USUAL_OVER);
    if (!keys.has("over")) {
      giveUp
          .filter(limit -> over.compareTo(limit.time()) >= 0)
          .ifPresent(
              limit ->
                  keys.self().refuse("over, " + shorterThan(limit), "nothing, which is 1 min"));
    }
    double errors =
        keys.find("standard-errors")
            .flatMap(value -> value.whole(0, MOST_STANDARD_ERRORS))
            .map(Long::doubleValue)
            .orElse((double) USUAL_STANDARD_ERRORS);
    int readings =
        keys.find("readings-at-least")
            .flatMap(value -> value.whole(3, MOST_READINGS))
            .map(Long::intValue)
            .orElse(USUAL_READINGS_OF_DRIFT);
    return below
        .<SettleRule>map(limit -> new SettleRule.Drift(limit, over, errors, readings))
        .orElse(USUAL);
  }

  /** A forecast that would always come too late is told. */
  private SettleRule forecast(Section keys, boolean byItself) {
    Optional<Boolean> asked = byItself ? keys.find(LEARN).flatMap(Entry::flag) : Optional.of(false);
    SettleRule rule =
        new SettleRule.Forecast(
            keys.find("within").flatMap(SettleRuleReader::within).orElse(USUAL_FORECAST),
            asked.orElse(true));
    giveUp
        .filter(limit -> rule.shortestWait().compareTo(limit.time()) >= 0)
        .ifPresent(limit -> refuseTooSlow(keys, limit, rule.shortestWait()));
    return rule;
  }

  private static void refuseTooSlow(Section keys, TimeLimit limit, Duration needed) {
    Optional<Entry> named = keys.find("rule");
    String which = named.isPresent() ? FORECAST : FORECAST + " where no rule is named";
    named
        .orElseGet(keys::self)
        .refuse(
            "a rule that can hold before give-up-after (" + limit.written() + ")",
            which + ", which takes " + needed.toSeconds() + " s or more");
  }

  /** A window that would never be full before the wait is given up is told. */
  private Optional<Duration> window(Entry entry, Allowed allowed) {
    Optional<Duration> span = allowed.span(entry);
    Optional<TimeLimit> passed =
        giveUp.filter(limit -> span.isPresent() && span.get().compareTo(limit.time()) >= 0);
    passed.ifPresent(limit -> entry.refuse(shorterThan(limit)));
    return passed.isPresent() ? Optional.empty() : span;
  }

  private static String shorterThan(TimeLimit limit) {
    return "a window shorter than give-up-after (" + limit.written() + ")";
  }

  private Optional<List<SettleRule>> combination(Section keys, int depth) {
    String expected = "a list of " + FEWEST_RULES + " to " + MOST_RULES + " rules";
    Optional<Entry> list = keys.need("rules", expected);
    if (list.isEmpty()) {
      return Optional.empty();
    }
    if (depth > DEEPEST) {
      list.get().refuse("combinations at most " + DEEPEST + " deep", "one inside them");
      return Optional.empty();
    }
    List<Entry> items = list.get().items(expected);
    if (!items.isEmpty() && (items.size() < FEWEST_RULES || items.size() > MOST_RULES)) {
      list.get().refuse(expected, items.size() + " of them");
      return Optional.empty();
    }
    List<SettleRule> rules = new ArrayList<>();
    for (Entry item : items) {
      item.section(A_RULE).ifPresent(section -> rules.add(read(section, List.of(), depth + 1)));
    }
    return rules.size() == items.size() && !rules.isEmpty() ? Optional.of(rules) : Optional.empty();
  }
}
