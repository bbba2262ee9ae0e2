package org.restpoint.config.file;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.restpoint.config.station.Quantity;

/**
 * What a quantity of the file measures, and the UCUM units it may be given in.
 *
 * <p>A quantity is a decimal number with its unit: {@code 0.1 mV}. Conversions within a measure are
 * exact (decimal).
 *
 * @param kind its name, e.g. {@code a potential}
 * @param units the units it may be given in, as a message tells them
 * @param example a quantity of it
 * @param factors each unit in the base unit, by UCUM code
 */
record Measure(String kind, String units, String example, Map<String, BigDecimal> factors) {

  /** Electric potential, base mV. */
  static final Measure POTENTIAL =
      of("a potential", "mV", "0.1 mV", Map.of("mV", "1", "uV", "0.001", "V", "1000"));

  /** Drift of a potential, base mV/h. */
  static final Measure DRIFT = of("a drift", "mV/h", "1 mV/h", Map.of("mV/h", "1"));

  /** Change of a potential with temperature, base mV/K. */
  static final Measure TEMPERATURE_COEFFICIENT =
      of("a temperature coefficient", "mV/K", "-0.9 mV/K", Map.of("mV/K", "1", "uV/K", "0.001"));

  /** How far apart potentials may lie, base mV; in % as well, which {@link #SHARE} reads. */
  static final Measure TOLERANCE =
      of("a tolerance", "mV or %", "0.1 mV", Map.of("mV", "1", "uV", "0.001", "V", "1000"));

  /** Drift of a potential as a limit of rest, base mV/min. */
  static final Measure DRIFT_PER_MINUTE =
      of("a drift", "mV/min", "0.2 mV/min", Map.of("mV/min", "1"));

  /** Span of time, base s. */
  static final Measure TIME =
      of(
          "a time",
          "ms, s, min, h or d",
          "10 min",
          Map.of("ms", "0.001", "s", "1", "min", "60", "h", "3600", "d", "86400"));

  /** Temperature, base Cel. */
  static final Measure TEMPERATURE = of("a temperature", "Cel", "22.5 Cel", Map.of("Cel", "1"));

  /** Difference of temperatures, base K. */
  static final Measure TEMPERATURE_DIFFERENCE =
      of("a temperature difference", "K", "1 K", Map.of("K", "1"));

  /** Resistance of a thermometer, base Ohm. */
  static final Measure RESISTANCE =
      of(
          "a resistance",
          "Ohm, kOhm or MOhm",
          "10 kOhm",
          Map.of("Ohm", "1", "kOhm", "1000", "MOhm", "1000000"));

  /** The figure beta of a thermistor, base K. */
  static final Measure BETA = of("a beta", "K", "3435 K", Map.of("K", "1"));

  /** Share of a whole, base %. */
  static final Measure SHARE = of("a share", "%", "1 %", Map.of("%", "1"));

  /** Mass (base mg/L) or amount (base mol/L) in a volume; {@link Concentrations} tells which. */
  static final Measure CONCENTRATION =
      of(
          "a concentration",
          "mg/L, ug/L, mmol/L, umol/L or mol/L",
          "20 mg/L",
          Map.of(
              "mg/L", "1", "ug/L", "0.001", "mol/L", "1", "mmol/L", "0.001", "umol/L", "0.000001"));

  /** Analyte in soil, base mg/kg. */
  static final Measure CONTENT_OF_SOIL =
      of("a content of soil", "mg/kg", "25 mg/kg", Map.of("mg/kg", "1"));

  /** Oven-dry mass of soil by its volume in the field, base g/cm3. */
  static final Measure BULK_DENSITY =
      of("a bulk density", "g/cm3", "1.3 g/cm3", Map.of("g/cm3", "1", "g/mL", "1"));

  /** Ionic strength, base mol/L. */
  static final Measure IONIC_STRENGTH =
      of(
          "an ionic strength",
          "mol/L or mmol/L",
          "0.02 mol/L",
          Map.of("mol/L", "1", "mmol/L", "0.001"));

  /** Volume of a liquid or a scoop, base mL. */
  static final Measure VOLUME =
      of("a volume", "mL, L or uL", "25 mL", Map.of("mL", "1", "L", "1000", "uL", "0.001"));

  /** Mass of soil, base g. */
  static final Measure MASS =
      of("a mass", "g, mg or kg", "10 g", Map.of("g", "1", "mg", "0.001", "kg", "1000"));

  /** Density of soil in a scoop, base g/mL. */
  static final Measure DENSITY =
      of("a density", "g/mL or g/cm3", "1.25 g/mL", Map.of("g/mL", "1", "g/cm3", "1"));

  /** pH, base pH. */
  static final Measure PH = of("a pH value", "pH", "7.00 pH", Map.of(Quantity.PH, "1"));

  /** Uncertainty of a pH, base pH. */
  static final Measure PH_UNCERTAINTY =
      of("an uncertainty", "pH", "0.01 pH", Map.of(Quantity.PH, "1"));

  private static final int LONGEST = 64;
  private static final Pattern QUANTITY =
      Pattern.compile("([-+]?(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][-+]?\\d{1,3})?) *(\\S*)");
  private static final Pattern NUMBERS = Pattern.compile("^[-+.\\d ]+");
  private static final Pattern DECIMAL_COMMA = Pattern.compile("([-+]?\\d+),(\\d+) *(\\S*)");

  private static Measure of(
      String kind, String units, String example, Map<String, String> factors) {
    Map<String, BigDecimal> exact = new TreeMap<>();
    factors.forEach((unit, factor) -> exact.put(unit, new BigDecimal(factor)));
    return new Measure(kind, units, example, Collections.unmodifiableMap(exact));
  }

  /**
   * A quantity as read.
   *
   * @param number the number as written
   * @param unit its unit as a UCUM code
   * @param base the number in the measure's base unit
   */
  record Measured(BigDecimal number, String unit, BigDecimal base) {}

  String expected() {
    return kind + " in " + units + ", e.g. " + example;
  }

  /** The base value of a quantity that the program itself writes. */
  BigDecimal base(String quantity) {
    Matcher matcher = QUANTITY.matcher(quantity);
    BigDecimal factor = matcher.matches() ? factors.get(ucum(matcher.group(2))) : null;
    if (factor == null) {
      throw new IllegalArgumentException("not " + expected() + ": " + quantity);
    }
    return new BigDecimal(matcher.group(1)).multiply(factor);
  }

  /** Reads a quantity; tells a missing unit, a foreign one and what is no quantity at all. */
  Optional<Measured> read(Entry entry) {
    boolean readable = entry.quietText().isPresent() || entry.isPlainNumberOrFlag();
    String written = entry.quietText().orElseGet(entry::found);
    Matcher matcher = QUANTITY.matcher(written.strip());
    if (!readable || written.length() > LONGEST || !matcher.matches()) {
      return refused(entry, entry.found(), commaRemedy(written));
    }
    if (matcher.group(2).isEmpty()) {
      return refused(entry, entry.found() + " (no unit)", Optional.empty());
    }
    String unit = ucum(matcher.group(2));
    BigDecimal factor = factors.get(unit);
    if (factor == null) {
      Optional<String> meant = meant(unit).map(u -> matcher.group(1) + " " + u);
      return refused(entry, entry.found(), meant.map(q -> "did you mean " + q + "?"));
    }
    BigDecimal number = new BigDecimal(matcher.group(1));
    return Optional.of(new Measured(number, unit, number.multiply(factor)));
  }

  /** Whether a value ends with one of the measure's units, whatever stands before it. */
  boolean isUnitOf(Entry entry) {
    String written = entry.quietText().orElse("").strip();
    return factors.containsKey(ucum(NUMBERS.matcher(written).replaceFirst("")));
  }

  private Optional<Measured> refused(Entry entry, String found, Optional<String> remedy) {
    entry.problems().add(new Problem(entry.key(), entry.line(), expected(), found, remedy));
    return Optional.empty();
  }

  private Optional<String> meant(String unit) {
    String small = unit.toLowerCase(Locale.ROOT);
    List<String> alike =
        factors.keySet().stream().filter(u -> u.toLowerCase(Locale.ROOT).equals(small)).toList();
    if (!alike.isEmpty()) {
      return Optional.of(alike.get(0));
    }
    return factors.keySet().stream()
        .filter(u -> u.startsWith(unit) || (unit.startsWith(u) && !unit.contains("/")))
        .max(Comparator.comparingInt(String::length));
  }

  private static Optional<String> commaRemedy(String written) {
    Matcher comma = DECIMAL_COMMA.matcher(written);
    return comma.matches()
        ? Optional.of(
            Wording.shown(
                "write a decimal point: %s.%s %s"
                    .formatted(comma.group(1), comma.group(2), comma.group(3))))
        : Optional.empty();
  }

  /**
   * The UCUM code of a unit as people write it: both micro signs are u, degree Celsius is Cel, pH
   * is [pH].
   */
  static String ucum(String written) {
    String unit = written.replace('\u00b5', 'u').replace('\u03bc', 'u');
    if (unit.equals("C") || unit.equals("\u00b0C")) {
      return "Cel";
    }
    return unit.equals("pH") ? Quantity.PH : unit;
  }
}
