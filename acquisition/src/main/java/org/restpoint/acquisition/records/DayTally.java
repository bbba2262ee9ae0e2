package org.restpoint.acquisition.records;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What one probe gave on one day. */
final class DayTally {

  /**
   * Of what there are numbers.
   *
   * @param name what was sampled and what the number is counted in: {@code tile water, solution as
   *     measured}
   * @param unit a UCUM code
   * @param basis {@code as-N} or {@code as-ion}
   */
  record Kind(String name, String unit, String basis) {

    private static final Comparator<Kind> BY_NAME =
        Comparator.comparing(Kind::name).thenComparing(Kind::unit).thenComparing(Kind::basis);
  }

  private final Map<String, Integer> results = new TreeMap<>();
  private final Map<String, Integer> flags = new TreeMap<>();
  private final Map<String, Integer> standards = new TreeMap<>();
  private final Map<String, Integer> checks = new TreeMap<>();
  private final Map<Kind, List<Told>> numbers = new TreeMap<>(Kind.BY_NAME);

  /** Counts the latest revision of a result, of a sample, of the stream or of a check. */
  void result(JsonNode result) {
    JsonNode check = result.path("verification");
    if (!check.isMissingNode()) {
      count(checks, check.path("role").asText() + " " + check.path("verdict").asText("not judged"));
      return;
    }
    result.path("flags").forEach(flag -> count(flags, flag.asText()));
    String outcome = result.path("outcome").asText();
    count(results, outcome);
    if (outcome.equals("settled")) {
      count(results, result.path("flags").isEmpty() ? "passed" : "flagged");
      number(result.at("/sample/kind").asText(), result.path("reported"));
    }
  }

  /** Counts a standard that was read. */
  void standard(JsonNode calibration) {
    count(standards, calibration.path("verdict").asText());
  }

  private void number(String sampled, JsonNode reported) {
    if (reported.isMissingNode()) {
      return;
    }
    String counted = reported.path("kind").asText();
    String name = sampled.isBlank() ? counted : sampled + ", " + counted;
    Kind kind = new Kind(name, reported.path("unit").asText(), reported.path("basis").asText());
    numbers.computeIfAbsent(kind, any -> new ArrayList<>()).add(Told.of(reported));
  }

  /** How many of {@code settled}, {@code passed}, {@code flagged}, … results there were. */
  int results(String what) {
    return results.getOrDefault(what, 0);
  }

  /** How often each flag was given to a result that is no check's. */
  Map<String, Integer> flags() {
    return flags;
  }

  /** How many standards were {@code accepted} or {@code refused}. */
  int standards(String verdict) {
    return standards.getOrDefault(verdict, 0);
  }

  /** How many checks ended how, by role and verdict. */
  Map<String, Integer> checks() {
    return checks;
  }

  /** The numbers of each kind, sorted. */
  Map<Kind, List<Told>> numbers() {
    Map<Kind, List<Told>> sorted = new LinkedHashMap<>();
    numbers.forEach((kind, told) -> sorted.put(kind, told.stream().sorted().toList()));
    return sorted;
  }

  private static void count(Map<String, Integer> counts, String what) {
    counts.merge(what, 1, Integer::sum);
  }
}
