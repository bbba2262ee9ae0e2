package org.restpoint.stability.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Basis;
import org.restpoint.stability.chemistry.Concentration;
import org.restpoint.stability.chemistry.ConcentrationUnit;
import org.restpoint.stability.electrode.Nernst;

/** Potentials that the Nernst equation gives are read back as what they were made from. */
class CalibrationPropertyTest {

  /** Rounding of a few hundred mV, over 0.3 decade of 24 mV, reached out over six decades. */
  private static final double ROUNDING_DECADES = 1e-10;

  /** An electrode that is not quite ideal. */
  record Electrode(int charge, double offsetMillivolts, double share) {

    double millivolts(double log10MolesPerLitre, double celsius) {
      double slope = share * Nernst.idealSlopeMillivoltsPerDecade(charge, celsius);
      return offsetMillivolts + slope * log10MolesPerLitre;
    }

    StandardPoint standard(double log10MolesPerLitre, double celsius) {
      double moles = Math.pow(10, log10MolesPerLitre);
      return Standards.at(moles, 0.01, millivolts(log10MolesPerLitre, celsius), 0.1, celsius);
    }

    Calibrator calibrator() {
      return new Calibrator(charge, Standards.LIMITS);
    }
  }

  @Provide
  Arbitrary<Electrode> electrodes() {
    return Combinators.combine(
            Arbitraries.of(-2, -1, 1, 2),
            Arbitraries.doubles().between(-400, 400),
            Arbitraries.doubles().between(0.91, 1.02).ofScale(6))
        .as(Electrode::new);
  }

  /** Two to seven standards, at least 0.3 decade apart. */
  @Provide
  Arbitrary<List<Double>> logarithms() {
    return Arbitraries.doubles()
        .between(0.3, 1)
        .list()
        .ofMinSize(2)
        .ofMaxSize(7)
        .map(
            gaps -> {
              List<Double> logarithms = new ArrayList<>();
              double at = -6;
              for (double gap : gaps) {
                at += gap;
                logarithms.add(at);
              }
              return logarithms;
            });
  }

  private static CalibrationOutcome judged(Electrode electrode, List<StandardPoint> points) {
    return electrode.calibrator().judge(points, Optional.empty());
  }

  @Property
  void anySampleIsReadBackAtAnyTemperature(
      @ForAll("electrodes") Electrode electrode,
      @ForAll("logarithms") List<Double> logarithms,
      @ForAll @DoubleRange(min = 5, max = 45) double celsius,
      @ForAll @DoubleRange(min = 5, max = 45) double sampleCelsius,
      @ForAll @DoubleRange(min = -6, max = 0) double sample) {
    List<StandardPoint> points = new ArrayList<>();
    for (int i = 0; i < logarithms.size(); i++) {
      // Standards not quite at the same temperature either.
      points.add(electrode.standard(logarithms.get(i), celsius + i % 2));
    }
    CalibrationOutcome outcome = judged(electrode, points);
    assertThat(outcome.accepted()).isTrue();
    ResponseCurve line = outcome.curve().orElseThrow();
    assertThat(line.slopePercent(electrode.charge()))
        .isCloseTo(100 * electrode.share(), within(1e-8));
    assertThat(line.offsetMillivolts()).isCloseTo(electrode.offsetMillivolts(), within(1e-8));
    double millivolts = electrode.millivolts(sample, sampleCelsius);
    assertThat(line.millivoltsAt(Math.pow(10, sample), sampleCelsius))
        .isCloseTo(millivolts, within(1e-8));
    assertThat(line.read(RestedSample.of(millivolts, 0.1, sampleCelsius, 0.5)).log10MolesPerLitre())
        .isCloseTo(sample, within(ROUNDING_DECADES));
  }

  @Property
  void oneStandardOnTheLastSlopeReadsAnySample(
      @ForAll("electrodes") Electrode electrode,
      @ForAll @DoubleRange(min = 5, max = 45) double celsius,
      @ForAll @DoubleRange(min = -30, max = 30) double shiftMillivolts,
      @ForAll @DoubleRange(min = -6, max = 0) double sample) {
    ResponseCurve last =
        judged(electrode, List.of(electrode.standard(-4, 25), electrode.standard(-2, 25)))
            .curve()
            .orElseThrow();
    Electrode later =
        new Electrode(
            electrode.charge(), electrode.offsetMillivolts() + shiftMillivolts, electrode.share());
    ResponseCurve line =
        electrode
            .calibrator()
            .judge(List.of(later.standard(-3, celsius)), Optional.of(last))
            .curve()
            .orElseThrow();
    assertThat(
            line.read(RestedSample.of(later.millivolts(sample, celsius), 0.1, celsius, 0))
                .log10MolesPerLitre())
        .isCloseTo(sample, within(ROUNDING_DECADES));
  }

  @Property
  void theOrderOfTheStandardsDoesNotMatter(
      @ForAll("electrodes") Electrode electrode,
      @ForAll("logarithms") List<Double> logarithms,
      @ForAll Random random) {
    List<StandardPoint> points = new ArrayList<>();
    for (double logarithm : logarithms) {
      StandardPoint exact = electrode.standard(logarithm, 25);
      double noise = 0.2 * random.nextGaussian();
      points.add(Standards.at(exact.molesPerLitre(), 0.01, exact.millivolts() + noise, 0.1, 25));
    }
    ResponseCurve line = judged(electrode, points).curve().orElseThrow();
    Collections.shuffle(points, random);
    ResponseCurve shuffled = judged(electrode, points).curve().orElseThrow();
    ReadBack one = line.read(RestedSample.of(0, 0.1, 20, 0.5));
    ReadBack other = shuffled.read(RestedSample.of(0, 0.1, 20, 0.5));
    assertThat(other.log10MolesPerLitre())
        .isCloseTo(one.log10MolesPerLitre(), within(ROUNDING_DECADES));
    assertThat(other.relativeStandardUncertainty() / Math.log(10))
        .isCloseTo(one.relativeStandardUncertainty() / Math.log(10), within(ROUNDING_DECADES));
  }

  @Property
  void theUnitAndTheBasisOfTheStandardsDoNotMatter(
      @ForAll ConcentrationUnit unit,
      @ForAll Basis basis,
      @ForAll @DoubleRange(min = 0.5, max = 200) double low,
      @ForAll @DoubleRange(min = 2, max = 50) double ratio) {
    Analyte nitrate = Analyte.named("nitrate").orElseThrow();
    Electrode electrode = new Electrode(-1, 80, 0.97);
    List<StandardPoint> asGiven = new ArrayList<>();
    List<StandardPoint> converted = new ArrayList<>();
    for (double milligramsAsN : new double[] {low, low * ratio}) {
      double moles =
          new Concentration(milligramsAsN, ConcentrationUnit.MILLIGRAMS_PER_LITRE, Basis.AS_N)
              .molesPerLitre(nitrate);
      double again =
          Concentration.ofMolesPerLitre(moles, nitrate, unit, basis).molesPerLitre(nitrate);
      double millivolts = electrode.millivolts(Math.log10(moles), 25);
      asGiven.add(Standards.at(moles, millivolts));
      converted.add(Standards.at(again, millivolts));
    }
    double sample = electrode.millivolts(-3, 25);
    ResponseCurve one = judged(electrode, asGiven).curve().orElseThrow();
    ResponseCurve other = judged(electrode, converted).curve().orElseThrow();
    assertThat(other.read(RestedSample.of(sample, 0.1, 25, 0)).log10MolesPerLitre())
        .isCloseTo(
            one.read(RestedSample.of(sample, 0.1, 25, 0)).log10MolesPerLitre(),
            within(ROUNDING_DECADES));
  }
}
