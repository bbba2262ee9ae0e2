package org.restpoint.config.file;

import java.util.Optional;
import org.restpoint.config.file.Measure.Measured;
import org.restpoint.config.station.Recipe;

/**
 * An amount of something with how far off it may be, under two keys.
 *
 * @param range the range of the amount
 * @param within what the other one is, e.g. {@code a tolerance}
 */
record Toleranced(Allowed range, String within) {

  /** A volume that is measured out. */
  static final Toleranced VOLUME =
      new Toleranced(Allowed.above(Measure.VOLUME, "0 mL", "10 L"), "a tolerance");

  /** A mass of soil. */
  static final Toleranced MASS =
      new Toleranced(Allowed.above(Measure.MASS, "0 g", "10 kg"), "a tolerance");

  /** A density of soil; muck has 0.2 g/mL, rock 2.7 g/mL. */
  static final Toleranced DENSITY =
      new Toleranced(Allowed.above(Measure.DENSITY, "0 g/mL", "3 g/mL"), "a standard uncertainty");

  /**
   * An amount as read.
   *
   * @param value in the base unit
   * @param within in the base unit, 0 or above, less than the value
   */
  record Read(double value, double within) {

    Recipe.Volume volume() {
      return new Recipe.Volume(value, within);
    }
  }

  /** What must be there. */
  Optional<Read> need(Section keys, String key, String withinKey) {
    Optional<Measured> amount = keys.need(key, range.measure().expected()).flatMap(range::measured);
    Optional<Measured> tolerance = keys.need(withinKey, expected()).flatMap(range.measure()::read);
    if (amount.isEmpty() || tolerance.isEmpty()) {
      return Optional.empty();
    }
    double value = amount.get().base().doubleValue();
    double off = tolerance.get().base().doubleValue();
    if (!(off >= 0 && off < value)) {
      String whole = amount.get().number().toPlainString() + " " + amount.get().unit();
      keys.find(withinKey)
          .ifPresent(at -> at.refuse(within + " from 0 to less than the " + whole + " of " + key));
      return Optional.empty();
    }
    return Optional.of(new Read(value, off));
  }

  /** What may be left out, both or neither. */
  Optional<Read> find(Section keys, String key, String withinKey) {
    return keys.has(key) || keys.has(withinKey) ? need(keys, key, withinKey) : Optional.empty();
  }

  private String expected() {
    return within + " in " + range.measure().units();
  }
}
