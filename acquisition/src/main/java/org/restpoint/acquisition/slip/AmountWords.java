package org.restpoint.acquisition.slip;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Map;
import java.util.Optional;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Basis;

/**
 * An amount as it is told to a person: the expanded uncertainty to two significant digits, the
 * value to the same decimal place (JCGM 100:2008, 7.2.6). Where the uncertainty is zero or not a
 * number, the value has four significant digits and no uncertainty beside it.
 *
 * <p>Between a number and its unit stands a no-break space.
 *
 * @param value in the unit
 * @param uncertainty expanded, in the unit
 * @param unit a UCUM code
 * @param basis {@code as-N} or {@code as-ion}
 * @param relation {@code =}, {@code <} or {@code >}
 */
record AmountWords(double value, double uncertainty, String unit, String basis, String relation) {

  /** Where lines are not broken. */
  static final String NO_BREAK = "\u00a0";

  private static final MathContext TWO_DIGITS = new MathContext(2, RoundingMode.HALF_EVEN);
  private static final MathContext FOUR_DIGITS = new MathContext(4, RoundingMode.HALF_EVEN);

  /** UCUM codes that a grower does not read as they stand. */
  private static final Map<String, String> READABLE =
      Map.ofEntries(
          Map.entry("[pH]", "pH"),
          Map.entry("ug/L", "µg/L"),
          Map.entry("umol/L", "µmol/L"),
          Map.entry("ug/kg", "µg/kg"),
          Map.entry("[ppm]", "ppm"),
          Map.entry("Cel", "°C"),
          Map.entry("[lb_av]/[acr_us]", "lb/acre"),
          Map.entry("[lb_av]/[acr_br]", "lb/acre"),
          Map.entry("kg/har", "kg/ha"));

  /** A unit as people write it. */
  static String unit(String ucum) {
    return READABLE.getOrDefault(ucum, ucum);
  }

  /** A number with four significant digits at most. */
  static String number(double value) {
    if (!Double.isFinite(value)) {
      return String.valueOf(value);
    }
    BigDecimal rounded = BigDecimal.valueOf(value).round(FOUR_DIGITS).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString();
  }

  /** A value and its expanded uncertainty, rounded; without a unit. */
  static String rounded(double value, double uncertainty) {
    return isUncertain(value, uncertainty)
        ? told(value, uncertainty) + NO_BREAK + "±" + NO_BREAK + told(uncertainty, uncertainty)
        : number(value);
  }

  /**
   * The whole of it: {@code 19.98 ± 0.25 mg/L nitrate-N}, {@code less than 0.50 mg/L nitrate-N}.
   */
  String words(Optional<Analyte> analyte) {
    String figure =
        switch (relation) {
          case "<" -> "less than " + limit();
          case ">" -> "more than " + limit();
          default -> rounded(value, uncertainty);
        };
    return isPh() ? "pH " + figure : figure + NO_BREAK + unit(unit) + " " + substance(analyte);
  }

  /** Between which values it lies; only where the relation is {@code =} and there is a doubt. */
  Optional<String> interval() {
    if (!relation.equals("=") || !isUncertain(value, uncertainty)) {
      return Optional.empty();
    }
    BigDecimal middle = new BigDecimal(told(value, uncertainty));
    BigDecimal half = new BigDecimal(told(uncertainty, uncertainty));
    BigDecimal lowest = middle.subtract(half);
    String from = lowest.signum() < 0 && !isPh() ? "0" : lowest.toPlainString();
    return Optional.of(
        "between %s and %s"
            .formatted(
                from, middle.add(half).toPlainString() + (isPh() ? "" : NO_BREAK + unit(unit))));
  }

  boolean isPh() {
    return unit.equals("[pH]");
  }

  private String limit() {
    return isUncertain(value, uncertainty) ? told(value, uncertainty) : number(value);
  }

  private String substance(Optional<Analyte> analyte) {
    boolean nitrogen = basis.equals(Basis.AS_N.code());
    if (analyte.isEmpty()) {
      return nitrogen ? "as N" : "as the ion";
    }
    String name = analyte.get().name();
    return nitrogen
        ? name + "-N"
        : analyte.get().bases().size() > 1 ? "whole " + name + " (not as N)" : name;
  }

  private static boolean isUncertain(double value, double uncertainty) {
    return Double.isFinite(value) && Double.isFinite(uncertainty) && uncertainty > 0;
  }

  /** To the second significant digit of the uncertainty: {@code 0.5} is {@code 0.50} there. */
  private static String told(double number, double uncertainty) {
    BigDecimal doubt = BigDecimal.valueOf(uncertainty).round(TWO_DIGITS);
    int places = doubt.scale() + TWO_DIGITS.getPrecision() - doubt.precision();
    return BigDecimal.valueOf(number).setScale(places, RoundingMode.HALF_EVEN).toPlainString();
  }
}
