package org.restpoint.config.file;

import java.util.Optional;

/**
 * A number without a unit, within a range.
 *
 * @param low the lowest number
 * @param lowIncluded whether the lowest number itself is allowed
 * @param high the highest number; always allowed itself
 * @param expected what should stand there
 */
record PlainNumber(double low, boolean lowIncluded, double high, String expected) {

  /** The pH of a standard. */
  static final PlainNumber PH = new PlainNumber(0, true, 14, "a number from 0 to 14, e.g. 7.00");

  /** A selectivity coefficient. */
  static final PlainNumber SELECTIVITY =
      new PlainNumber(0, false, 1e6, "a number above 0, at most 1000000, e.g. 0.005");

  /** A coefficient of Steinhart and Hart's equation, with R in ohm. */
  static final PlainNumber STEINHART_HART =
      new PlainNumber(-1, true, 1, "a coefficient of Steinhart and Hart, e.g. 1.129e-3");

  /** The number; tells one that is out of range and what is no number. */
  Optional<Double> read(Entry entry) {
    Optional<Double> number = entry.quietNumber();
    if (number.filter(this::holds).isPresent()) {
      return number;
    }
    if (entry.quietText().filter(text -> text.matches("-?\\d{1,9}(\\.\\d{1,9})?")).isPresent()) {
      entry.refuse(expected, entry.found() + ", which is text", "leave the quotes out");
    } else if (Measure.PH.isUnitOf(entry)) {
      entry.refuse(expected, entry.found(), "leave the unit out: the key says it");
    } else {
      entry.refuse(expected);
    }
    return Optional.empty();
  }

  private boolean holds(double number) {
    return number <= high && (lowIncluded ? number >= low : number > low);
  }
}
