package org.restpoint.acquisition.station;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.restpoint.acquisition.meaning.GuidanceTerms;
import org.restpoint.acquisition.preparation.Recipes;
import org.restpoint.acquisition.probe.ProbeSettings;
import org.restpoint.config.file.Vocabulary;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.Probe;
import org.restpoint.config.station.Quantity;
import org.restpoint.config.station.SettleRule;
import org.restpoint.config.station.Station;
import org.restpoint.config.station.Thermometer;
import org.restpoint.stability.buffer.PhBuffer;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Basis;
import org.restpoint.stability.chemistry.Concentration;
import org.restpoint.stability.chemistry.ConcentrationUnit;
import org.restpoint.stability.rest.AllOf;
import org.restpoint.stability.rest.AnyOf;
import org.restpoint.stability.rest.ConsecutiveRule;
import org.restpoint.stability.rest.DriftRule;
import org.restpoint.stability.rest.ForecastRule;
import org.restpoint.stability.rest.RestRule;
import org.restpoint.stability.rest.SettleLimits;
import org.restpoint.stability.rest.Tolerance;
import org.restpoint.stability.thermometer.Beta;
import org.restpoint.stability.thermometer.Platinum;
import org.restpoint.stability.thermometer.ResistanceThermometer;
import org.restpoint.stability.thermometer.SteinhartHart;

/** Translates the words of a station file into the terms of the science. */
public final class StationTerms {

  /** The analyte that is measured in pH. */
  private static final String HYDROGEN = "hydrogen";

  private StationTerms() {}

  /** Whether an electrode is measured in pH. */
  static boolean isInPh(Electrode electrode) {
    return electrode.analyte().equals(HYDROGEN);
  }

  /** The analytes, buffers and thermometers that a station file may name. */
  public static Vocabulary vocabulary() {
    Map<String, Set<String>> bases = new LinkedHashMap<>();
    for (Analyte analyte : Analyte.known()) {
      bases.put(
          analyte.name(),
          analyte.bases().stream()
              .map(Basis::code)
              .collect(Collectors.toCollection(LinkedHashSet::new)));
    }
    return new Vocabulary(
        bases,
        Set.of(HYDROGEN),
        PhBuffer.known().stream().map(PhBuffer::name).collect(Collectors.toSet()),
        Analyte.known().stream()
            .filter(analyte -> analyte.charge() < 0)
            .map(Analyte::name)
            .collect(Collectors.toSet()),
        StationTerms::fault,
        GuidanceTerms.known());
  }

  private static Optional<String> fault(Thermometer thermometer) {
    try {
      thermometer(thermometer);
      return Optional.empty();
    } catch (IllegalArgumentException e) {
      // There is no such thermometer: the file is wrong, and the text says how.
      return Optional.of(String.valueOf(e.getMessage()));
    }
  }

  /**
   * The thermometer of a checked station file.
   *
   * @throws IllegalArgumentException when no thermometer has these figures
   */
  public static ResistanceThermometer thermometer(Thermometer thermometer) {
    if (thermometer instanceof Thermometer.Platinum platinum) {
      return new Platinum(platinum.ohmsAtZero());
    }
    if (thermometer instanceof Thermometer.Beta beta) {
      return new Beta(beta.ohms(), beta.celsius(), beta.betaKelvin());
    }
    Thermometer.SteinhartHart given = (Thermometer.SteinhartHart) thermometer;
    return new SteinhartHart(given.a(), given.b(), given.c());
  }

  /** The electrodes of a station. */
  static List<ProbeSettings> probes(Station station) {
    List<ProbeSettings> all = new ArrayList<>();
    for (Probe probe : station.probes().values()) {
      probe.electrode().ifPresent(electrode -> all.add(settings(station, probe, electrode)));
    }
    return all;
  }

  private static ProbeSettings settings(Station station, Probe probe, Electrode electrode) {
    ElectrodeTerms terms = new ElectrodeTerms(station, electrode);
    return new ProbeSettings(
        station.name(),
        probe.name(),
        terms.analyte(),
        terms.amounts(),
        rule(electrode.settle().rule()),
        electrode.settle().rule() instanceof SettleRule.Forecast forecast && forecast.learn(),
        new SettleLimits(electrode.settle().notBefore(), electrode.settle().giveUpAfter()),
        terms.standards(),
        terms.calibrator(),
        terms.matrix(),
        electrode.calibrate(),
        electrode.routine(),
        electrode.care(),
        Recipes.of(station.recipes()),
        terms.checking());
  }

  private static RestRule rule(SettleRule rule) {
    if (rule instanceof SettleRule.Consecutive consecutive) {
      return new ConsecutiveRule(
          consecutive.readings(), tolerance(consecutive.within()), consecutive.span());
    }
    if (rule instanceof SettleRule.Drift drift) {
      return new DriftRule(
          drift.belowMillivoltsPerMinute(),
          drift.over(),
          drift.standardErrors(),
          drift.readingsAtLeast());
    }
    if (rule instanceof SettleRule.Forecast forecast) {
      return new ForecastRule(tolerance(forecast.within()));
    }
    if (rule instanceof SettleRule.AllOf all) {
      return new AllOf(all.rules().stream().map(StationTerms::rule).toList());
    }
    SettleRule.AnyOf any = (SettleRule.AnyOf) rule;
    return new AnyOf(any.rules().stream().map(StationTerms::rule).toList());
  }

  private static Tolerance tolerance(SettleRule.Within within) {
    return within instanceof SettleRule.Within.Percent share
        ? new Tolerance.ConcentrationPercent(share.percent())
        : new Tolerance.Millivolts(((SettleRule.Within.Millivolts) within).millivolts());
  }

  /** The analyte of an electrode in a checked station file. */
  public static Analyte analyte(Electrode electrode) {
    return Analyte.named(electrode.analyte()).orElseThrow();
  }

  /** A quantity on an electrode's own basis, in mol/L of its ion. */
  public static double molesPerLitre(Quantity quantity, Electrode electrode) {
    return concentration(quantity, basis(electrode.basis())).molesPerLitre(analyte(electrode));
  }

  static Concentration concentration(Quantity quantity, Basis basis) {
    return new Concentration(
        quantity.value(), ConcentrationUnit.ofCode(quantity.unit()).orElseThrow(), basis);
  }

  static Basis basis(Optional<String> code) {
    return code.flatMap(Basis::ofCode).orElse(Basis.AS_ION);
  }
}
