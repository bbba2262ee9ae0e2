package org.restpoint.acquisition.records;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What became of each sample that has a number, by the best of its results. */
final class SampleFates {

  /** How good the best result is. */
  enum Best {
    NONE,
    FLAGGED,
    PASSED
  }

  /**
   * What became of a sample.
   *
   * @param number its number
   * @param day the day and probe of its last reading, or of the instruction that names it
   * @param best its best result
   * @param why why there is no better one, by codes
   */
  record Fate(String number, Day day, Best best, String why) {}

  private final Map<String, Fate> fates = new LinkedHashMap<>();

  /** A sample that was to be read. */
  void expect(String number, Day day) {
    if (!number.isBlank()) {
      fates.putIfAbsent(number, new Fate(number, day, Best.NONE, "not read"));
    }
  }

  /** A sample's result; a check of it does not stand for the sample. */
  void result(JsonNode result, Day day) {
    String number = result.at("/sample/number").asText();
    if (number.isBlank() || result.has("verification")) {
      return;
    }
    JsonNode flags = result.path("flags");
    Best best =
        !result.path("outcome").asText().equals("settled")
            ? Best.NONE
            : flags.isEmpty() ? Best.PASSED : Best.FLAGGED;
    Fate fate = new Fate(number, day, best, Column.text(flags));
    fates.merge(
        number, fate, (before, now) -> now.best().compareTo(before.best()) >= 0 ? now : before);
  }

  /** The samples whose best result is so, in the order in which they were first named. */
  List<Fate> of(Best best) {
    return fates.values().stream().filter(fate -> fate.best() == best).toList();
  }
}
