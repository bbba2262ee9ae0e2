package org.restpoint.config.file;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.restpoint.config.file.Measure.Measured;
import org.restpoint.config.station.Quantity;

/**
 * Concentrations of the file, and their uncertainties.
 *
 * <p>Mass concentrations (mg/L, ug/L) and amount concentrations (mol/L, mmol/L, umol/L) are two
 * families: within one, units convert by powers of ten; between them only a molar mass would, and
 * the reader knows none.
 */
final class Concentrations {

  /** The units a concentration may be given in. */
  static final List<String> UNITS = List.of("mg/L", "ug/L", "mmol/L", "umol/L", "mol/L");

  /** No solution holds more: 1 kg in a litre. */
  private static final BigDecimal MOST_MG_PER_LITRE = new BigDecimal("1000000");

  /** No solution holds more: pure water is 55 mol/L of water. */
  private static final BigDecimal MOST_MOL_PER_LITRE = new BigDecimal("55");

  private static final Allowed PERCENT = Allowed.from(Measure.SHARE, "0 %", "100 %");

  private Concentrations() {}

  /** A concentration above zero. */
  static Optional<Measured> read(Entry entry) {
    Optional<Measured> read = Measure.CONCENTRATION.read(entry);
    if (read.isPresent()) {
      String unit = read.get().unit();
      BigDecimal base = read.get().base();
      // Also refuses what is above zero as a decimal and zero as a double.
      if (base.doubleValue() <= 0 || base.compareTo(mostBase(unit)) > 0) {
        entry.refuse("a concentration " + bounds(unit));
        return Optional.empty();
      }
    }
    return read;
  }

  static Quantity quantity(Measured measured) {
    return new Quantity(measured.number().doubleValue(), measured.unit());
  }

  /** A unit for results, with the micro sign read as u. */
  static Optional<String> unit(Entry entry) {
    Optional<String> plain = entry.quietText().map(Measure::ucum).filter(UNITS::contains);
    return plain.isPresent() ? plain : entry.word(UNITS);
  }

  /**
   * A standard uncertainty, in % or in a unit of the concentration's family.
   *
   * @param of the concentration, empty where it was refused
   * @return the uncertainty as a share of the concentration, 0 to 1
   */
  static Optional<Double> uncertainty(Entry entry, Optional<Measured> of) {
    String written = entry.quietText().orElse("").strip();
    if (written.endsWith("%")) {
      return PERCENT.number(entry).map(percent -> percent / 100);
    }
    if (!written.endsWith("/L")) {
      String noUnit = entry.isPlainNumberOrFlag() ? " (no unit)" : "";
      entry.refuse("an uncertainty in % or mg/L, e.g. 1 %", entry.found() + noUnit);
      return Optional.empty();
    }
    Optional<Measured> read = Measure.CONCENTRATION.read(entry);
    if (read.isEmpty() || of.isEmpty()) {
      return Optional.empty();
    }
    if (isAmount(read.get().unit()) != isAmount(of.get().unit())) {
      entry.refuse("an uncertainty in % or in " + of.get().unit() + " like the concentration");
      return Optional.empty();
    }
    double share = read.get().base().divide(of.get().base(), MathContext.DECIMAL64).doubleValue();
    if (share < 0 || share > 1) {
      entry.refuse("an uncertainty from 0 to the whole concentration");
      return Optional.empty();
    }
    return Optional.of(share);
  }

  /** The most of anything that a solution holds, in a unit. */
  static double most(String unit) {
    BigDecimal factor = Objects.requireNonNull(Measure.CONCENTRATION.factors().get(unit), unit);
    return mostBase(unit).divide(factor, MathContext.DECIMAL64).doubleValue();
  }

  /** What a solution can hold, in words, for the family of a unit. */
  static String bounds(String unit) {
    String base = isAmount(unit) ? " mol/L" : " mg/L";
    return "above 0" + base + ", at most " + mostBase(unit) + base;
  }

  private static BigDecimal mostBase(String unit) {
    return isAmount(unit) ? MOST_MOL_PER_LITRE : MOST_MG_PER_LITRE;
  }

  /** Whether a unit counts amounts of substance rather than masses. */
  static boolean isAmount(String unit) {
    return unit.endsWith("mol/L");
  }
}
