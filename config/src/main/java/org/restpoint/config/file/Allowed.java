package org.restpoint.config.file;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.Optional;
import org.restpoint.config.file.Measure.Measured;

/**
 * The range a quantity may lie in.
 *
 * @param measure what it measures
 * @param low the lowest value as a message shows it
 * @param lowBase the lowest value in the measure's base unit
 * @param lowIncluded whether the lowest value itself is allowed
 * @param high the highest value as a message shows it
 * @param highBase the highest value in the measure's base unit; always allowed itself
 */
record Allowed(
    Measure measure,
    String low,
    BigDecimal lowBase,
    boolean lowIncluded,
    String high,
    BigDecimal highBase) {

  /** How long something may be waited for. */
  static final Allowed WAIT = from(Measure.TIME, "10 ms", "366 d");

  /** Water that is not frozen hard and does not boil. */
  static final Allowed WATER = from(Measure.TEMPERATURE, "-5 Cel", "100 Cel");

  /** pH of water. */
  static final Allowed PH = from(Measure.PH, "0 pH", "14 pH");

  private static final int NANO_DIGITS = 9;

  static Allowed from(Measure measure, String low, String high) {
    return new Allowed(measure, low, measure.base(low), true, high, measure.base(high));
  }

  static Allowed above(Measure measure, String low, String high) {
    return new Allowed(measure, low, measure.base(low), false, high, measure.base(high));
  }

  /** The quantity in the measure's base unit; tells one that is out of range. */
  Optional<Double> number(Entry entry) {
    return measured(entry).map(Measured::base).map(BigDecimal::doubleValue);
  }

  /** The span, to the nanosecond; only for a range of {@link Measure#TIME}. */
  Optional<Duration> span(Entry entry) {
    return measured(entry)
        .map(Measured::base)
        .map(s -> s.movePointRight(NANO_DIGITS).setScale(0, RoundingMode.HALF_UP))
        .map(nanos -> Duration.ofNanos(nanos.longValueExact()));
  }

  /** The quantity as it was written; tells one that is out of range. */
  Optional<Measured> measured(Entry entry) {
    Optional<Measured> read = measure.read(entry);
    if (read.isPresent() && !holds(read.get().base())) {
      entry.refuse(expected());
      return Optional.empty();
    }
    return read;
  }

  private boolean holds(BigDecimal base) {
    int overLow = base.compareTo(lowBase);
    return base.compareTo(highBase) <= 0 && (lowIncluded ? overLow >= 0 : overLow > 0);
  }

  private String expected() {
    String from = lowIncluded ? " from " + low + " to " : " above " + low + ", at most ";
    return measure.kind() + from + high;
  }
}
