package org.restpoint.acquisition.probe;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.restpoint.acquisition.check.CheckPlan;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.config.station.Calibrate;
import org.restpoint.stability.activity.Davies;
import org.restpoint.stability.activity.Ion;
import org.restpoint.stability.buffer.PhBuffer;
import org.restpoint.stability.calibration.Calibrator;
import org.restpoint.stability.calibration.Compensation;
import org.restpoint.stability.calibration.LowEnd;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Basis;
import org.restpoint.stability.chemistry.Concentration;
import org.restpoint.stability.chemistry.ConcentrationUnit;
import org.restpoint.stability.interference.Interferent;
import org.restpoint.stability.quality.RecoveryLimits;

/** What may be known of an electrode beside its standards, as changes to plain settings. */
final class Changes {

  private Changes() {}

  /** Numbers are told from {@code low} to {@code high} alone. */
  static UnaryOperator<ProbeSettings> range(double low, double high) {
    return plain ->
        copy(
            plain,
            new Amounts(plain.scale(), Optional.of(new Amounts.Range(low, high))),
            plain.standards(),
            plain.calibrator(),
            plain.matrix(),
            plain.calibrate());
  }

  /** The line bends at its low end, and turns about an isopotential point. */
  static UnaryOperator<ProbeSettings> curve(LowEnd lowEnd, Compensation compensation) {
    return plain ->
        copy(
            plain,
            plain.amounts(),
            plain.standards(),
            new Calibrator(
                plain.analyte().charge(), plain.calibrator().limits(), lowEnd, compensation, 0),
            plain.matrix(),
            plain.calibrate());
  }

  /** Sample and standards may differ by so many kelvins. */
  static UnaryOperator<ProbeSettings> temperatureWithin(double kelvin) {
    return plain ->
        copy(
            plain,
            plain.amounts(),
            plain.standards(),
            plain.calibrator(),
            plain.matrix(),
            new Calibrate(
                plain.calibrate().standards(),
                plain.calibrate().restandardize(),
                plain.calibrate().every(),
                plain.calibrate().bracket(),
                plain.calibrate().slopeEvery(),
                plain.calibrate().slopePercentLow(),
                plain.calibrate().slopePercentHigh(),
                plain.calibrate().validFor(),
                plain.calibrate().lowEnd(),
                plain.calibrate().range(),
                kelvin,
                plain.calibrate().stockRelativeUncertainty()));
  }

  /** Other ions in the samples. */
  static UnaryOperator<ProbeSettings> ions(List<Interferent> known, List<Interferent> atMost) {
    return matrix(
        plain -> new Matrix(plain.matrix().salt(), plain.analyte().charge(), known, atMost));
  }

  /** No adjustor: samples of an ionic strength known to 20 %, standards of their own salt alone. */
  static UnaryOperator<ProbeSettings> salty(double molesPerLitre) {
    return matrix(
        plain ->
            new Matrix(
                Optional.of(
                    new Matrix.Salt(
                        Ion.of(plain.analyte()).orElseThrow(),
                        new Davies(),
                        molesPerLitre,
                        0.2,
                        OptionalDouble.empty())),
                plain.analyte().charge(),
                plain.matrix().known(),
                plain.matrix().atMost()));
  }

  private interface ToMatrix {
    Matrix of(ProbeSettings plain);
  }

  private static UnaryOperator<ProbeSettings> matrix(ToMatrix matrix) {
    return plain ->
        copy(
            plain,
            plain.amounts(),
            plain.standards(),
            plain.calibrator(),
            matrix.of(plain),
            plain.calibrate());
  }

  /** A pH electrode with buffers by their names, each known to 0.01 pH. */
  static Setup ph(String... buffers) {
    Setup setup = Setup.nitrate().analyte("hydrogen");
    return setup.with(
        plain -> {
          Analyte hydrogen = plain.analyte();
          Map<String, Standard> standards = new LinkedHashMap<>();
          for (String name : buffers) {
            PhBuffer buffer = PhBuffer.named(name).orElseThrow();
            standards.put(
                name,
                new Standard(
                    name, new Standard.Content.Buffer(buffer::ph, 0.01), Optional.empty()));
          }
          return copy(
              plain,
              new Amounts(new Scale.OfPh(), Optional.empty()),
              standards,
              plain.calibrator(),
              Matrix.alike(hydrogen.charge()),
              plain.calibrate());
        });
  }

  /** Results are checked as a plan says, also with a standard of another supplier. */
  static UnaryOperator<ProbeSettings> checked(CheckPlan plan) {
    return plain ->
        new ProbeSettings(
            plain.station(),
            plain.probe(),
            plain.analyte(),
            plain.amounts(),
            plain.rule(),
            plain.learn(),
            plain.limits(),
            plain.standards(),
            plain.calibrator(),
            plain.matrix(),
            plain.calibrate(),
            plain.routine(),
            plain.care(),
            plain.recipes(),
            new Checking(plan, Optional.of(second(plain.analyte()))));
  }

  /** Usual limits, 0.5 mg/L for a blank, 0.5 mL of 1000 mg/L to 50 mL for a spike. */
  static CheckPlan plan(Map<CheckRole, Calibrate.Every> every) {
    CheckPlan usual = CheckPlan.usual();
    return new CheckPlan(
        every,
        Optional.of("second"),
        usual.recovery(),
        usual.phWithin(),
        OptionalDouble.of(0.5),
        usual.duplicatePercent(),
        usual.duplicatePh(),
        Optional.of(
            new CheckPlan.SpikeTerms(
                0.5, 1000, 50, 0.01, RecoveryLimits.OF_A_SPIKE, "0.5 mL of 1000 mg/L to 50 mL")));
  }

  private static Standard second(Analyte analyte) {
    Concentration twenty =
        new Concentration(20, ConcentrationUnit.MILLIGRAMS_PER_LITRE, Basis.AS_N);
    return Standard.of("second", twenty, analyte, 0.01, Optional.empty());
  }

  private static ProbeSettings copy(
      ProbeSettings plain,
      Amounts amounts,
      Map<String, Standard> standards,
      Calibrator calibrator,
      Matrix matrix,
      Calibrate calibrate) {
    return new ProbeSettings(
        plain.station(),
        plain.probe(),
        plain.analyte(),
        amounts,
        plain.rule(),
        plain.learn(),
        plain.limits(),
        standards,
        calibrator,
        matrix,
        calibrate,
        plain.routine(),
        plain.care(),
        plain.recipes(),
        plain.checking());
  }
}
