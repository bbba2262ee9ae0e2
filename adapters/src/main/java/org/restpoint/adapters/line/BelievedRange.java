package org.restpoint.adapters.line;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.adapters.text.DecimalNumber;
import org.restpoint.adapters.text.Excerpt;

/**
 * The values that a number on a line may have.
 *
 * @param group the named group of a pattern that picks it out
 * @param unit its UCUM unit
 * @param least the least value believed
 * @param most the largest value believed
 */
record BelievedRange(String group, String unit, double least, double most) {

  /** What is wrong with the text as such a number; empty where nothing is. */
  Optional<String> fault(String text) {
    OptionalDouble number = DecimalNumber.in(text);
    if (number.isEmpty()) {
      String hint = text.indexOf(',') >= 0 ? ": a decimal point is expected" : "";
      return Optional.of(
          "%s is \"%s\", which is not a number%s".formatted(group, Excerpt.of(text), hint));
    }
    double value = number.getAsDouble();
    if (value >= least && value <= most) {
      return Optional.empty();
    }
    return Optional.of(
        String.format(
            Locale.ROOT,
            "%s %s is outside %.0f to %.0f %s",
            Excerpt.of(text),
            unit,
            least,
            most,
            unit));
  }
}
