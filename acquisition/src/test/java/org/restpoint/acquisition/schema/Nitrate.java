package org.restpoint.acquisition.schema;

import java.time.Duration;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.check.CheckPlan;
import org.restpoint.acquisition.check.CheckPlan.SpikeTerms;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.acquisition.preparation.Recipes;
import org.restpoint.acquisition.probe.Amounts;
import org.restpoint.acquisition.probe.Checking;
import org.restpoint.acquisition.probe.Matrix;
import org.restpoint.acquisition.probe.ProbeSettings;
import org.restpoint.acquisition.probe.Scale;
import org.restpoint.acquisition.probe.Standard;
import org.restpoint.config.station.Calibrate;
import org.restpoint.config.station.Care;
import org.restpoint.config.station.LowEnd;
import org.restpoint.config.station.Recipe;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.calibration.Calibrator;
import org.restpoint.stability.calibration.SlopeLimits;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Basis;
import org.restpoint.stability.chemistry.Concentration;
import org.restpoint.stability.chemistry.ConcentrationUnit;
import org.restpoint.stability.electrode.Nernst;
import org.restpoint.stability.quality.RecoveryLimits;
import org.restpoint.stability.rest.ConsecutiveRule;
import org.restpoint.stability.rest.RestRule;
import org.restpoint.stability.rest.SettleLimits;

/** An invented nitrate electrode at 25 °C whose slope is 97 % of the ideal one. */
final class Nitrate {

  static final String STATION = "willow-bench";
  static final String PROBE = "no3-a";
  static final double CELSIUS = 25;

  private static final Analyte NITRATE = Analyte.named("nitrate").orElseThrow();
  private static final double OFFSET_MILLIVOLTS = 20;
  private static final double SLOPE =
      0.97 * Nernst.idealSlopeMillivoltsPerDecade(NITRATE.charge(), CELSIUS);

  private Nitrate() {}

  /** Two standards a decade apart and more, one of them alike to another, one long expired. */
  static ProbeSettings settings(Routine routine) {
    return settings(routine, new ConsecutiveRule(5, 0.1));
  }

  /** The same with another rule of rest. */
  static ProbeSettings settings(Routine routine, RestRule rule) {
    return settings(routine, rule, Checking.usual(), Optional.empty());
  }

  /** At the bench, with a blank every second sample and something to spike with. */
  static ProbeSettings checked() {
    CheckPlan usual = CheckPlan.usual();
    CheckPlan plan =
        new CheckPlan(
            Map.of(CheckRole.BLANK, new Calibrate.Every.Samples(2)),
            Optional.of("low"),
            usual.recovery(),
            usual.phWithin(),
            OptionalDouble.of(0.5),
            usual.duplicatePercent(),
            usual.duplicatePh(),
            Optional.of(
                new SpikeTerms(
                    0.5,
                    1000,
                    50,
                    0.01,
                    RecoveryLimits.OF_A_SPIKE,
                    "0.5 mL of 1000 mg/L to 50 mL")));
    return settings(
        new Routine.Instructed(),
        new ConsecutiveRule(5, 0.1),
        new Checking(plan, Optional.empty()),
        Optional.empty());
  }

  /** At the bench, looked after as usual. */
  static ProbeSettings lookedAfter() {
    Care usual = new Care(Duration.ofMinutes(20), Duration.ofMinutes(5), Duration.ofDays(14));
    return settings(
        new Routine.Instructed(),
        new ConsecutiveRule(5, 0.1),
        Checking.usual(),
        Optional.of(usual));
  }

  private static ProbeSettings settings(
      Routine routine, RestRule rule, Checking checking, Optional<Care> care) {
    Map<String, Standard> standards = new LinkedHashMap<>();
    standards.put("low", standard("low", 5, Optional.empty()));
    standards.put("high", standard("high", 50, Optional.empty()));
    standards.put("spare", standard("spare", 5, Optional.empty()));
    standards.put("old", standard("old", 20, Optional.of(LocalDate.of(2020, 1, 31))));
    return new ProbeSettings(
        STATION,
        PROBE,
        NITRATE,
        new Amounts(
            new Scale.OfConcentration(NITRATE, ConcentrationUnit.MILLIGRAMS_PER_LITRE, Basis.AS_N),
            Optional.empty()),
        rule,
        true,
        new SettleLimits(Duration.ofSeconds(3), Duration.ofMinutes(10)),
        standards,
        new Calibrator(NITRATE.charge(), new SlopeLimits(90, 103)),
        Matrix.alike(NITRATE.charge()),
        new Calibrate(
            List.copyOf(standards.keySet()),
            Optional.of("low"),
            new Calibrate.Every.Samples(1),
            false,
            Optional.empty(),
            90,
            103,
            Duration.ofHours(12),
            new LowEnd.Straight(),
            Optional.empty(),
            2,
            0),
        routine,
        care,
        Recipes.of(recipes()),
        checking);
  }

  /** Tile water with adjustor, and soil of which nobody knows the moisture. */
  private static Map<String, Recipe> recipes() {
    Recipe.Volume sample = new Recipe.Volume(25, 0.03);
    Recipe.Vessel adjusted =
        new Recipe.Vessel.Poured(
            sample, Optional.of(new Recipe.Volume(0.5, 0.01)), Optional.empty());
    Recipe.Vessel plain = new Recipe.Vessel.AsItIs(0);
    return Map.of(
        "tile",
        new Recipe.Water("tile", Optional.empty(), adjusted, adjusted),
        "soil",
        new Recipe.Soil(
            "soil",
            new Recipe.Portion.Weighed(10, 0.05, Recipe.Dryness.AIR_DRY),
            sample,
            Optional.empty(),
            Optional.empty(),
            plain,
            plain),
        "bare",
        new Recipe.Water("bare", Optional.empty(), adjusted, plain));
  }

  private static Standard standard(
      String name, double milligramsPerLitre, Optional<LocalDate> expires) {
    Concentration concentration =
        new Concentration(milligramsPerLitre, ConcentrationUnit.MILLIGRAMS_PER_LITRE, Basis.AS_N);
    return Standard.of(name, concentration, NITRATE, 0.005, expires);
  }

  /** The potential this electrode takes in a solution of so many mg/L as N. */
  static double millivolts(double milligramsPerLitre) {
    double molesPerLitre =
        new Concentration(milligramsPerLitre, ConcentrationUnit.MILLIGRAMS_PER_LITRE, Basis.AS_N)
            .molesPerLitre(NITRATE);
    return OFFSET_MILLIVOLTS + SLOPE * Math.log10(molesPerLitre);
  }
}
