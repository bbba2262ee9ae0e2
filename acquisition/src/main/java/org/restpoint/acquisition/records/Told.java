package org.restpoint.acquisition.records;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Comparator;
import java.util.List;
import org.restpoint.acquisition.probe.Words;

/**
 * A number as it was told, in the order of size. What is less than a limit stands just below the
 * limit, what is more than one just above it: how far, nobody knows.
 *
 * @param value the number or the limit
 * @param relation {@code =}, {@code <} or {@code >}
 */
record Told(double value, String relation) implements Comparable<Told> {

  private static final Comparator<Told> BY_SIZE =
      Comparator.comparingDouble(Told::value).thenComparingInt(Told::side);

  static Told of(JsonNode amount) {
    return new Told(amount.path("value").asDouble(), amount.path("relation").asText());
  }

  @Override
  public int compareTo(Told other) {
    return BY_SIZE.compare(this, other);
  }

  /** With all its digits: {@code <0.5}. */
  String exactly() {
    return sign() + value;
  }

  /** With four digits at most. */
  String briefly() {
    return sign() + Words.number(value);
  }

  /**
   * The middle of some: of an even number of them the mean of the two in the middle. Where one of
   * those is only a limit there is no mean; then the lower of the two, which is not in the wrong
   * half.
   *
   * @param sorted at least one
   */
  static Told median(List<Told> sorted) {
    Told upper = sorted.get(sorted.size() / 2);
    Told lower = sorted.get((sorted.size() - 1) / 2);
    return lower.isNumber() && upper.isNumber()
        ? new Told(lower.value / 2 + upper.value / 2, "=")
        : lower;
  }

  private boolean isNumber() {
    return side() == 0;
  }

  private int side() {
    return switch (relation) {
      case "<" -> -1;
      case ">" -> 1;
      default -> 0;
    };
  }

  private String sign() {
    return isNumber() ? "" : relation;
  }
}
