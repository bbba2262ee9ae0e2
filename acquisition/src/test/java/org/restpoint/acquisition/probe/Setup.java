package org.restpoint.acquisition.probe;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.restpoint.acquisition.preparation.Recipes;
import org.restpoint.config.station.Calibrate;
import org.restpoint.config.station.Care;
import org.restpoint.config.station.LowEnd;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.calibration.Calibrator;
import org.restpoint.stability.calibration.SlopeLimits;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Basis;
import org.restpoint.stability.chemistry.Concentration;
import org.restpoint.stability.chemistry.ConcentrationUnit;
import org.restpoint.stability.rest.ConsecutiveRule;
import org.restpoint.stability.rest.RestRule;
import org.restpoint.stability.rest.SettleLimits;

/** A probe's settings, changed where a test needs it: three readings alike are rest. */
final class Setup {

  private String analyte = "nitrate";
  private Basis basis = Basis.AS_N;
  private ConcentrationUnit unit = ConcentrationUnit.MILLIGRAMS_PER_LITRE;
  private int readings = 3;
  private Duration notBefore = Duration.ZERO;
  private Duration giveUpAfter = Duration.ofSeconds(60);
  private final Map<String, Double> standards = new LinkedHashMap<>();
  private final Map<String, LocalDate> expiries = new HashMap<>();
  private Optional<String> restandardize = Optional.empty();
  private Calibrate.Every every = new Calibrate.Every.Never();
  private Duration validFor = Duration.ofHours(12);
  private boolean bracket;
  private Optional<Duration> slopeEvery = Optional.empty();
  private Optional<Care> care = Optional.empty();
  private Routine routine = new Routine.Instructed();
  private Optional<RestRule> rule = Optional.empty();
  private boolean learn = true;
  private Recipes recipes = Recipes.none();
  private UnaryOperator<ProbeSettings> change = settings -> settings;

  /** Nitrate as N in mg/L, at the bench, with standards of 5, 20 and 100 mg/L. */
  static Setup nitrate() {
    return new Setup().standard("low", 5).standard("mid", 20).standard("high", 100);
  }

  static Setup of(String analyte, Basis basis, ConcentrationUnit unit) {
    Setup setup = new Setup();
    setup.analyte = analyte;
    setup.basis = basis;
    setup.unit = unit;
    return setup;
  }

  Setup standard(String name, double value) {
    standards.put(name, value);
    return this;
  }

  Setup without(String standard) {
    standards.remove(standard);
    return this;
  }

  Setup expiring(String standard, String day) {
    expiries.put(standard, LocalDate.parse(day));
    return this;
  }

  Setup analyte(String name) {
    analyte = name;
    return this;
  }

  Setup readings(int count) {
    readings = count;
    return this;
  }

  Setup rule(RestRule how) {
    rule = Optional.of(how);
    return this;
  }

  Setup learn(boolean whether) {
    learn = whether;
    return this;
  }

  Setup recipes(Recipes known) {
    recipes = known;
    return this;
  }

  Setup notBefore(Duration span) {
    notBefore = span;
    return this;
  }

  Setup giveUpAfter(Duration span) {
    giveUpAfter = span;
    return this;
  }

  Setup restandardize(String standard, Calibrate.Every how) {
    restandardize = Optional.of(standard);
    every = how;
    return this;
  }

  Setup bracket() {
    bracket = true;
    return this;
  }

  Setup slopeEvery(Duration span) {
    slopeEvery = Optional.of(span);
    return this;
  }

  /** Care as it is usual: 20 min of soaking, dry after 5 min. */
  Setup care() {
    care =
        Optional.of(new Care(Duration.ofMinutes(20), Duration.ofMinutes(5), Duration.ofDays(14)));
    return this;
  }

  Setup validFor(Duration span) {
    validFor = span;
    return this;
  }

  Setup routine(Routine how) {
    routine = how;
    return this;
  }

  /** Changes what stands in the settings otherwise; see {@link Changes}. */
  Setup with(UnaryOperator<ProbeSettings> further) {
    UnaryOperator<ProbeSettings> before = change;
    change = settings -> further.apply(before.apply(settings));
    return this;
  }

  ProbeSettings settings() {
    return change.apply(plain());
  }

  private ProbeSettings plain() {
    Analyte ion = Analyte.named(analyte).orElseThrow();
    Map<String, Standard> solutions = new LinkedHashMap<>();
    standards.forEach(
        (name, value) -> {
          Concentration concentration = new Concentration(value, unit, basis);
          solutions.put(
              name,
              Standard.of(name, concentration, ion, 0.01, Optional.ofNullable(expiries.get(name))));
        });
    List<String> names = new ArrayList<>(standards.keySet());
    return new ProbeSettings(
        "willow-bench",
        "no3-a",
        ion,
        new Amounts(new Scale.OfConcentration(ion, unit, basis), Optional.empty()),
        rule.orElseGet(() -> new ConsecutiveRule(readings, 0.1)),
        learn,
        new SettleLimits(notBefore, giveUpAfter),
        solutions,
        new Calibrator(ion.charge(), new SlopeLimits(90, 103)),
        Matrix.alike(ion.charge()),
        new Calibrate(
            names,
            restandardize,
            every,
            bracket,
            slopeEvery,
            90,
            103,
            validFor,
            new LowEnd.Straight(),
            Optional.empty(),
            2,
            0),
        routine,
        care,
        recipes,
        Checking.usual());
  }
}
