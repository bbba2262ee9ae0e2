package org.restpoint.config.file;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A range as written: {@code 0.5..200 mg/L}.
 *
 * @param low its first number
 * @param high its second number
 * @param unit its unit as a UCUM code, not yet checked
 */
record RangeText(double low, double high, String unit) {

  private static final Pattern RANGE =
      Pattern.compile("(\\d{1,9}(?:\\.\\d{1,9})?) *\\.\\. *(\\d{1,9}(?:\\.\\d{1,9})?) *(\\S*)");

  /** Reads a range; tells what is none and one without a unit. */
  static Optional<RangeText> read(Entry entry, String expected) {
    Optional<String> text = entry.text(expected);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Matcher matcher = RANGE.matcher(text.get().strip());
    if (!matcher.matches()) {
      entry.refuse(expected);
      return Optional.empty();
    }
    if (matcher.group(3).isEmpty()) {
      entry.refuse(expected, entry.found() + " (no unit)");
      return Optional.empty();
    }
    double low = Double.parseDouble(matcher.group(1));
    double high = Double.parseDouble(matcher.group(2));
    return Optional.of(new RangeText(low, high, Measure.ucum(matcher.group(3))));
  }
}
