package org.restpoint.stability.guidance;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Basis;
import org.restpoint.stability.uncertainty.Source.Quantity;

/** The tables that come with the program, each with its source and what of that was seen. */
public final class PublishedTables {

  /** The name of {@link #usDrinkingWater}. */
  public static final String US_DRINKING_WATER = "us-drinking-water";

  /** The name of {@link #whoDrinkingWater}. */
  public static final String WHO_DRINKING_WATER = "who-drinking-water";

  /** The name of {@link #lateSpringSoil}. */
  public static final String LATE_SPRING_SOIL = "late-spring-soil";

  /** The name of {@link #autumnResidualSoil}. */
  public static final String AUTUMN_RESIDUAL_SOIL = "autumn-residual-soil";

  /** The critical number of the late-spring test, mg/kg of nitrate as N in the top foot. */
  public static final double CRITICAL = 25;

  /** The same after a spring with rain more than 20 % above normal; published as 20 to 22. */
  public static final double CRITICAL_AFTER_A_WET_SPRING = 21;

  /** The same where the field was manured as well. */
  public static final double CRITICAL_MANURED_AND_WET = 15;

  /** lb N/acre for each mg/kg that is lacking, of the late-spring test. */
  private static final double POUNDS_PER_MILLIGRAM = 8;

  private static final double MOST_AS_N = 10;
  private static final double MOST_AS_ION = 50;

  /** The top foot, 12 international inches. */
  private static final Depth TOP_FOOT = new Depth(0, 30.48);

  private static final String ANY_SEASON = "any season";

  private PublishedTables() {}

  /**
   * The limit of nitrate in drinking water of the United States.
   *
   * <p>40 CFR 141.62(b), the section from memory; the same figure was seen in the appendix of 40
   * CFR 192, subpart A, and in water suppliers' pages.
   */
  public static GuidanceTable usDrinkingWater() {
    return new GuidanceTable(
        "Nitrate in drinking water, limit of the United States",
        "40 CFR 141.62(b): maximum contaminant level 10 mg/L of nitrate as nitrogen",
        new Scope(
            "United States, public water systems; no rule binds a private well, for which it is the"
                + " customary yardstick",
            ANY_SEASON,
            Optional.empty(),
            Optional.of("in the code of federal regulations"),
            Optional.empty()),
        nitrate(Measurand.WATER, "mg/L", Basis.AS_N),
        limit(MOST_AS_N, "the limit for drinking water of 10 mg/L as N"),
        Optional.empty(),
        Cautions.DRINKING + " " + Cautions.ADVICE);
  }

  /**
   * The guideline value of the World Health Organization for nitrate in drinking water.
   *
   * <p>Seen as quoted from page 417 of the guidelines; the guidelines themselves from memory.
   */
  public static GuidanceTable whoDrinkingWater() {
    return new GuidanceTable(
        "Nitrate in drinking water, guideline value of the World Health Organization",
        "WHO, Guidelines for drinking-water quality: 50 mg/L as nitrate ion, to protect bottle-fed"
            + " infants",
        new Scope(
            "world-wide, where no law of the country says otherwise",
            ANY_SEASON,
            Optional.empty(),
            Optional.of("fourth edition, from 2011 on"),
            Optional.empty()),
        nitrate(Measurand.WATER, "mg/L", Basis.AS_ION),
        limit(MOST_AS_ION, "the guideline value for drinking water of 50 mg/L as nitrate"),
        Optional.empty(),
        Cautions.DRINKING
            + " Nitrite adds to nitrate: WHO asks that the sum of both, each as a share of its"
            + " guideline value, be 1 at most. "
            + Cautions.ADVICE);
  }

  /**
   * The late-spring or pre-sidedress test of nitrate in the top foot under corn.
   *
   * <p>Iowa State University Extension, PM 1714, replaced by CROP 3140 in 2017; critical number,
   * adjustments and formula as explained by B. Lang, Farm Progress, 21 June 2004 (seen), and by the
   * Iowa Farm Bureau, 26 May 2017 (seen: 20 to 22 mg/kg where it rained more than 20 % above normal
   * since 1 April). The publications themselves were not seen.
   *
   * @param critical the critical number, mg/kg as N: {@link #CRITICAL} or an adjusted one
   * @param because why another one than that is taken
   */
  public static GuidanceTable lateSpringSoil(double critical, Optional<String> because) {
    String number = Figures.number(critical) + " mg/kg";
    String chosen =
        because
            .map(why -> "; critical number " + number + " instead of 25, because: " + why)
            .orElse("; critical number " + number);
    return new GuidanceTable(
        "Late-spring (pre-sidedress) soil nitrate test for corn",
        "Iowa State University Extension, PM 1714, since 2017 CROP 3140: rate = (critical - test) x"
            + " 8 lb N/acre; as explained by B. Lang, Farm Progress, 21 June 2004, and the Iowa Farm"
            + " Bureau, 26 May 2017"
            + chosen,
        new Scope(
            "Iowa",
            "late spring, corn 6 to 12 inches tall",
            Optional.of(TOP_FOOT),
            Optional.of("basics unchanged in the edition of 2017"),
            Optional.empty()),
        nitrate(Measurand.DRY_SOIL, Measurand.MILLIGRAMS_PER_KILOGRAM, Basis.AS_N),
        List.of(
            new Band(
                OptionalDouble.empty(),
                OptionalDouble.of(critical),
                "below the critical " + number + ": corn is likely to pay for more nitrogen",
                Optional.empty()),
            new Band(
                OptionalDouble.of(critical),
                OptionalDouble.empty(),
                "at or above the critical " + number + ": no more nitrogen is called for",
                Optional.empty())),
        Optional.of(new Formula.Shortfall(critical, POUNDS_PER_MILLIGRAM)),
        Cautions.SPREADING
            + " Fields with manure and corn after alfalfa have guidelines of their own in CROP 3140,"
            + " which this table does not hold. "
            + Cautions.ADVICE);
  }

  /**
   * Nitrate left in the soil in autumn, as an amount on the field. No band was seen that holds
   * beyond one region, so there is none.
   *
   * @param bulkDensity of the layer in the field, g/cm3
   */
  public static GuidanceTable autumnResidualSoil(Quantity bulkDensity) {
    return new GuidanceTable(
        "Residual soil nitrate in autumn",
        "arithmetic: kg/ha = 0.1 x mg/kg x cm x g/cm3; 1 lb/acre is 1.120851 kg/ha (NIST Handbook"
            + " 44, appendix C)",
        new Scope(
            "anywhere; what is much and what is little is said by local advice",
            "autumn, after harvest",
            Optional.empty(),
            Optional.empty(),
            Optional.empty()),
        nitrate(Measurand.DRY_SOIL, Measurand.MILLIGRAMS_PER_KILOGRAM, Basis.AS_N),
        List.of(),
        Optional.of(new Formula.OnArea(bulkDensity)),
        "What is left in autumn may be washed out before spring: it is no credit by itself. Whether"
            + " it is much is for the local extension service to say. "
            + Cautions.SPREADING
            + " "
            + Cautions.ADVICE);
  }

  private static List<Band> limit(double limit, String name) {
    return List.of(
        new Band(
            OptionalDouble.empty(), OptionalDouble.of(limit), "below " + name, Optional.empty()),
        new Band(
            OptionalDouble.of(limit),
            OptionalDouble.empty(),
            "at or above " + name,
            Optional.of("Do not drink it until a certified laboratory has tested it.")));
  }

  private static Measurand nitrate(String of, String unit, Basis basis) {
    return new Measurand(Analyte.named("nitrate").orElseThrow(), of, unit, basis);
  }
}
