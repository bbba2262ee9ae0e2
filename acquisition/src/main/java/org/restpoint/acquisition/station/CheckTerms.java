package org.restpoint.acquisition.station;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.restpoint.acquisition.check.CheckPlan;
import org.restpoint.acquisition.check.CheckPlan.SpikeTerms;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.acquisition.probe.Words;
import org.restpoint.config.station.Calibrate.Every;
import org.restpoint.config.station.Checks;
import org.restpoint.config.station.Checks.Recovery;
import org.restpoint.config.station.Quantity;
import org.restpoint.stability.quality.RecoveryLimits;

/**
 * Translates what a station file says of checks; where it says nothing the usual limits stand.
 *
 * @param checks what it says
 * @param value gives a quantity in what results are counted in
 */
record CheckTerms(Checks checks, ToDoubleFunction<Quantity> value) {

  CheckPlan plan() {
    CheckPlan usual = CheckPlan.usual();
    Optional<Checks.CheckStandard> standard = checks.checkStandard();
    Optional<Checks.Duplicate> duplicate = checks.duplicate();
    return new CheckPlan(
        rhythm(),
        standard.flatMap(Checks.CheckStandard::standard),
        limits(standard.flatMap(Checks.CheckStandard::recovery), usual.recovery()),
        or(standard.map(Checks.CheckStandard::withinPh), usual.phWithin()),
        checks
            .blank()
            .flatMap(Checks.Blank::below)
            .map(below -> OptionalDouble.of(value.applyAsDouble(below)))
            .orElseGet(OptionalDouble::empty),
        or(duplicate.map(Checks.Duplicate::withinPercent), usual.duplicatePercent()),
        or(duplicate.map(Checks.Duplicate::withinPh), usual.duplicatePh()),
        checks.spike().map(this::spike));
  }

  private Map<CheckRole, Every> rhythm() {
    Map<CheckRole, Every> every = new EnumMap<>(CheckRole.class);
    checks.checkStandard().ifPresent(one -> every.put(CheckRole.CHECK_STANDARD, one.every()));
    checks.blank().ifPresent(one -> every.put(CheckRole.BLANK, one.every()));
    checks.duplicate().ifPresent(one -> every.put(CheckRole.DUPLICATE, one.every()));
    checks.spike().ifPresent(one -> every.put(CheckRole.SPIKE, one.every()));
    return every;
  }

  private SpikeTerms spike(Checks.Spike spike) {
    return new SpikeTerms(
        spike.addsMillilitres(),
        value.applyAsDouble(spike.of()),
        spike.intoMillilitres(),
        spike.relativeUncertainty(),
        limits(spike.recovery(), RecoveryLimits.OF_A_SPIKE),
        "%s mL of %s %s to %s mL"
            .formatted(
                Words.number(spike.addsMillilitres()),
                Words.number(spike.of().value()),
                spike.of().unit(),
                Words.number(spike.intoMillilitres())));
  }

  private static RecoveryLimits limits(Optional<Recovery> given, RecoveryLimits usual) {
    return given
        .map(recovery -> new RecoveryLimits(recovery.lowPercent(), recovery.highPercent()))
        .orElse(usual);
  }

  private static double or(Optional<OptionalDouble> given, double usual) {
    return given.orElse(OptionalDouble.empty()).orElse(usual);
  }
}
