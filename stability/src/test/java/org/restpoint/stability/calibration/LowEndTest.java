package org.restpoint.stability.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.MonteCarlo;

class LowEndTest {

  private static final SlopeLimits LIMITS = new SlopeLimits(80, 110);

  private static Calibrator nitrate(LowEnd lowEnd) {
    return new Calibrator(-1, LIMITS, lowEnd, Compensation.ideal(), 0);
  }

  private static ResponseCurve bent(double lowEnd) {
    return new ResponseCurve(
        80, -57, lowEnd, 25, Compensation.ideal(), ResponseCurve.NO_DOUBT, ResponseCurve.NO_DOUBT);
  }

  private static List<StandardPoint> standards(ResponseCurve truth, double... logarithms) {
    List<StandardPoint> points = new ArrayList<>();
    for (double logarithm : logarithms) {
      double c = Math.pow(10, logarithm);
      points.add(Standards.at(c, 0.01, truth.millivoltsAt(c, 25), 0.1, 25));
    }
    return points;
  }

  @Test
  void aBentLowEndIsFittedAndIsTheDetectionLimit() {
    CalibrationOutcome outcome =
        nitrate(new LowEnd.Curved())
            .judge(standards(bent(1e-5), -6, -5, -4, -3, -2), Optional.empty());

    assertThat(outcome.accepted()).isTrue();
    assertThat(outcome.remarks()).isEmpty();
    ResponseCurve curve = outcome.curve().orElseThrow();
    assertThat(curve.slopeMillivoltsPerDecade()).isCloseTo(-57, within(1e-6));
    DetectionLimit limit = outcome.detectionLimit().orElseThrow();
    assertThat(limit.molesPerLitre()).isCloseTo(1e-5, within(1e-11));
    assertThat(limit.standardUncertainty()).isBetween(1e-8, 1e-6);
  }

  /** IUPAC: there the curve lies S·log10 2 from its prolonged line, 17.2 mV for 57 mV/decade. */
  @Test
  void atTheDetectionLimitTheCurveIsHalfADoublingOffItsLine() {
    assertThat(bent(1e-5).millivoltsAt(1e-5, 25) - bent(0).millivoltsAt(1e-5, 25))
        .isCloseTo(-57 * Math.log10(2), within(1e-9));
  }

  @Test
  void aStraightLineAskedToBendStaysStraightAndSaysSo() {
    CalibrationOutcome outcome =
        nitrate(new LowEnd.Curved()).judge(standards(bent(0), -5, -4, -3, -2), Optional.empty());

    assertThat(outcome.detectionLimit()).isEmpty();
    assertThat(outcome.remarks())
        .extracting(Reason::text)
        .containsExactly(
            "no bend of the low end can be told from chance: a straight line was drawn");
  }

  @Test
  void threeStandardsDoNotBend() {
    CalibrationOutcome outcome =
        nitrate(new LowEnd.Curved()).judge(standards(bent(1e-5), -5, -4, -3), Optional.empty());

    assertThat(outcome.remarks().get(0).text())
        .isEqualTo("a bent low end needs 4 standards, there are 3: a straight line was drawn");
  }

  @Test
  void aLowEndKnownBeforehandNeedsTwoStandardsAndBringsItsOwnUncertainty() {
    LowEnd fixed = new LowEnd.Fixed(1e-5, 2e-6);
    CalibrationOutcome outcome =
        nitrate(fixed).judge(standards(bent(1e-5), -4.5, -2), Optional.empty());
    CalibrationOutcome without =
        nitrate(new LowEnd.Fixed(1e-5, 0)).judge(standards(bent(1e-5), -4.5, -2), Optional.empty());

    ResponseCurve curve = outcome.curve().orElseThrow();
    assertThat(curve.slopeMillivoltsPerDecade()).isCloseTo(-57, within(1e-9));
    assertThat(outcome.detectionLimit()).contains(new DetectionLimit(1e-5, 2e-6));
    double seen = curve.millivoltsAt(2e-5, 25);
    RestedSample sample = RestedSample.of(seen, 0.1, 25, 0.2);
    assertThat(curve.read(sample).relativeStandardUncertainty())
        .isGreaterThan(
            without.curve().orElseThrow().read(sample).relativeStandardUncertainty() + 0.01);
  }

  @Test
  void oneStandardKeepsTheBendOfTheLastCurve() {
    Calibrator calibrator = nitrate(new LowEnd.Curved());
    ResponseCurve last =
        calibrator
            .judge(standards(bent(1e-5), -6, -5, -4, -3, -2), Optional.empty())
            .curve()
            .orElseThrow();
    StandardPoint shifted =
        Standards.at(1e-4, 0.01, bent(1e-5).millivoltsAt(1e-4, 25) + 5, 0.1, 25);

    ResponseCurve curve =
        calibrator.judge(List.of(shifted), Optional.of(last)).curve().orElseThrow();

    assertThat(curve.lowEndMolesPerLitre()).isEqualTo(last.lowEndMolesPerLitre());
    assertThat(curve.offsetMillivolts()).isCloseTo(85, within(1e-5));
    assertThat(
            curve
                .read(RestedSample.of(bent(1e-5).millivoltsAt(2e-6, 25) + 5, 0.1, 25, 0.2))
                .molesPerLitre())
        .isCloseTo(2e-6, within(1e-10));
  }

  @Test
  void aPotentialPastTheLevelLeavesNothingOfTheIonButStillItsUncertainty() {
    ResponseCurve curve = bent(1e-5);
    ReadBack nothing = curve.read(RestedSample.of(curve.millivoltsAt(0, 25) + 1, 0.5, 25, 0.2));

    assertThat(nothing.molesPerLitre()).isNegative();
    assertThat(nothing.log10MolesPerLitre()).isNaN();
    assertThat(nothing.relativeStandardUncertainty()).isNaN();
    assertThat(nothing.budget("c", "mol/L", c -> c).standardUncertainty()).isBetween(1e-7, 1e-6);
  }

  /** First order against the drawn distributions, where the result is known to 6 %. */
  @Test
  void theBudgetOfABentCurveAgreesWithThePropagationOfDistributions() {
    ResponseCurve curve =
        nitrate(new LowEnd.Curved())
            .judge(standards(bent(1e-5), -6, -5, -4, -3, -2), Optional.empty())
            .curve()
            .orElseThrow();
    ReadBack read =
        curve.read(
            RestedSample.of(curve.millivoltsAt(3e-5, 20), 0.3, 20, 0.5)
                .withActivityCoefficient(0.9, 0.02)
                .withBackground(2e-6, 1e-6));

    Budget budget = read.budget("c", "mol/L", c -> c);
    MonteCarlo drawn = MonteCarlo.of(read.sources(), read.model(), 100_000, 20260101);

    assertThat(budget.value()).isCloseTo((3e-5 - 2e-6) / 0.9, within(1e-10));
    assertThat(budget.standardUncertainty() / drawn.standardDeviation()).isCloseTo(1, within(0.02));
    assertThat(budget.contributions()).hasSize(8);
    assertThat(budget.contributions().stream().mapToDouble(c -> c.sharePercent()).sum())
        .isCloseTo(100, within(1e-9));
  }

  @Property(tries = 200)
  void anotherUnitOfConcentrationMovesTheCurveAndChangesNothing(
      @ForAll @DoubleRange(min = 0.01, max = 100) double factor) {
    List<StandardPoint> points = standards(bent(1e-5), -6, -5, -4, -3, -2);
    List<StandardPoint> scaled =
        points.stream()
            .map(p -> Standards.at(factor * p.molesPerLitre(), 0.01, p.millivolts(), 0.1, 25))
            .toList();
    ResponseCurve one =
        nitrate(new LowEnd.Curved()).judge(points, Optional.empty()).curve().orElseThrow();
    ResponseCurve other =
        nitrate(new LowEnd.Curved()).judge(scaled, Optional.empty()).curve().orElseThrow();
    RestedSample sample = RestedSample.of(300, 0.1, 25, 0);

    assertThat(other.read(sample).molesPerLitre() / one.read(sample).molesPerLitre())
        .isCloseTo(factor, within(1e-6 * factor));
    assertThat(other.read(sample).relativeStandardUncertainty())
        .isCloseTo(one.read(sample).relativeStandardUncertainty(), within(1e-4));
  }
}
