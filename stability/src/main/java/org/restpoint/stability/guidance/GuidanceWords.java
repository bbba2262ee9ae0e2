package org.restpoint.stability.guidance;

import java.util.List;
import java.util.stream.Collectors;
import org.restpoint.stability.preparation.SoilProfile;
import org.restpoint.stability.uncertainty.Budget;

/** What a number means, for a person. */
final class GuidanceWords {

  private static final double COVERAGE = 2;

  private GuidanceWords() {}

  /** The band that a number is in, or that it cannot tell and between which. */
  static String of(Found number, List<Band> bands) {
    if (bands.size() == 1) {
      return number.text() + ": " + sentence(bands.get(0).says());
    }
    String either =
        bands.stream().map(band -> "“" + band.says() + "”").collect(Collectors.joining(" or "));
    String limits =
        bands.stream()
            .skip(1)
            .map(band -> Figures.number(band.from().orElseThrow()))
            .collect(Collectors.joining(" and "));
    String why =
        number.relation() == Relation.EQUAL
            ? " lies too near " + limits + " " + number.measurand().units() + " to tell"
            : " is all that is known, and that cannot tell on which side of " + limits + " it lies";
    return number.text() + why + ". It may be " + either + ".";
  }

  private static String sentence(String says) {
    return says.endsWith(".") ? says : says + ".";
  }

  /** What the formula for a rate makes of a number. */
  static String rate(Formula.Shortfall lack, Found number) {
    String unit = " " + Rate.UNIT;
    double least = Math.max(0, (lack.critical() - number.highest()) * lack.factor());
    double most = Math.max(0, (lack.critical() - Math.max(0, number.lowest())) * lack.factor());
    if (most == 0) {
      return "The published rate is 0" + unit + ".";
    }
    if (number.relation() == Relation.EQUAL && number.value() < lack.critical()) {
      double rate = (lack.critical() - number.value()) * lack.factor();
      return "The published rate is "
          + Figures.number(rate, number.expandedUncertainty() * lack.factor())
          + unit
          + (least == 0 ? ", and none at all lies within that." : ".");
    }
    return number.relation() == Relation.EQUAL
        ? "The published rate is 0" + unit + ", but up to " + whole(most) + " lies within reach."
        : "The published rate lies between "
            + whole(least)
            + " and "
            + whole(most)
            + unit
            + ": read it in range for a single one.";
  }

  /** How a rate was reckoned. */
  static String reckoned(Formula.Shortfall lack, Found number) {
    String critical = Figures.number(lack.critical());
    String unit = " " + number.measurand().units();
    if (number.relation() == Relation.ABOVE || number.value() >= lack.critical()) {
      return number.text() + " is not below the critical " + critical + unit + ": 0";
    }
    double rate = (lack.critical() - number.value()) * lack.factor();
    return "("
        + critical
        + " - "
        + Figures.number(number.value())
        + ")"
        + unit
        + " x "
        + Figures.number(lack.factor())
        + " "
        + Rate.UNIT
        + " for each = "
        + whole(rate)
        + " "
        + Rate.UNIT
        + " ("
        + whole(rate / SoilProfile.poundsPerAcre(1))
        + " kg N/ha)";
  }

  /** What lies on an area. */
  static String amount(
      Found number, Depth depth, Budget kilograms, Budget pounds, double bulkDensity) {
    String how =
        number.relation() == Relation.EQUAL
            ? ""
            : number.relation() == Relation.BELOW ? "less than " : "more than ";
    return number.text()
        + " in "
        + depth.text()
        + " at a bulk density of "
        + Figures.number(bulkDensity)
        + " g/cm3 is "
        + how
        + amount(number, kilograms)
        + " kg/ha or "
        + how
        + amount(number, pounds)
        + " lb/acre of "
        + counted(number.measurand())
        + ".";
  }

  private static String amount(Found number, Budget amount) {
    return number.relation() == Relation.EQUAL
        ? Figures.number(amount.value(), COVERAGE * amount.standardUncertainty())
        : Figures.number(amount.value());
  }

  private static String counted(Measurand measurand) {
    String units = measurand.units();
    int as = units.indexOf(" as ");
    return measurand.analyte().name() + (as < 0 ? "" : units.substring(as));
  }

  private static String whole(double rate) {
    return Figures.number(Math.rint(rate));
  }
}
