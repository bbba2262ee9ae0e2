package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Calibration.Limit;
import org.restpoint.acquisition.event.Calibration.Point;
import org.restpoint.acquisition.event.Result;
import org.restpoint.stability.calibration.Compensation;
import org.restpoint.stability.calibration.LowEnd;
import org.restpoint.stability.calibration.Reason;

/** A line that bends at its low end as if 0.3 mg/L were always there. */
class BentLineTest {

  private static final double BEND = 0.3;

  private static Setup bent() {
    return Setup.nitrate()
        .standard("n-01", 0.1)
        .standard("n-1", 1)
        .with(Changes.curve(new LowEnd.Curved(), Compensation.isopotential(-2.5, 0.1)));
  }

  private static Bench read(Bench bench, String standard, double value) {
    return bench.tell("calibrate", standard).read(3, bench.millivolts(value + BEND));
  }

  private static Bench calibrated() {
    Bench bench = Bench.of(bent());
    read(bench, "n-01", 0.1);
    read(bench, "n-1", 1);
    read(bench, "low", 5);
    return read(bench, "high", 100);
  }

  private static Result measured(Bench bench, double value, double celsius) {
    return bench
        .tell("{\"do\":\"measure\"}")
        .read(3, bench.millivolts(value + BEND, celsius), Bench.known(celsius))
        .result();
  }

  @Test
  void theCalibrationTellsItsDetectionLimit() {
    Limit limit = calibrated().calibration().detectionLimit().orElseThrow();
    assertThat(limit.value()).isCloseTo(BEND, within(1e-6));
    assertThat(limit.unit()).isEqualTo("mg/L");
    assertThat(limit.basis()).isEqualTo("as-N");
    assertThat(limit.uncertainty()).isBetween(0.001, 0.03);
  }

  @Test
  void aStraightLineHasNone() {
    Bench bench = Bench.of(Setup.nitrate()).calibrate("low").calibrate("mid").calibrate("high");
    assertThat(bench.calibration().detectionLimit()).isEmpty();
    assertThat(bench.calibration().remarks()).isEmpty();
  }

  @Test
  void leveragesAddUpToTheParametersOfTheCurve() {
    Calibration calibration = calibrated().calibration();
    assertThat(calibration.points())
        .extracting(point -> point.leverage().orElseThrow())
        .allSatisfy(leverage -> assertThat(leverage).isBetween(0.0, 1.0));
    assertThat(leverages(calibration)).isCloseTo(3, within(1e-6));
    Bench straight = Bench.of(Setup.nitrate()).calibrate("low").calibrate("mid").calibrate("high");
    assertThat(leverages(straight.calibration())).isCloseTo(2, within(1e-9));
  }

  private static double leverages(Calibration calibration) {
    return calibration.points().stream()
        .map(Point::leverage)
        .mapToDouble(leverage -> leverage.orElseThrow())
        .sum();
  }

  @Test
  void oneStandardHasNoLeverage() {
    Calibration one = Bench.of(Setup.nitrate()).calibrate("mid").calibration();
    assertThat(one.points().get(0).leverage()).isEmpty();
    assertThat(one.points().get(0).residualMillivolts().orElseThrow()).isCloseTo(0, within(1e-9));
  }

  @Test
  void aBendThatIsNotThereIsSaidToBeMissing() {
    Bench bench = Bench.of(bent());
    bench.calibrate("n-01").calibrate("n-1").calibrate("low").calibrate("high");
    assertThat(bench.calibration().flags()).containsExactly("low-end-straight");
    assertThat(bench.calibration().remarks())
        .extracting(Reason::text)
        .containsExactly(
            "no bend of the low end can be told from chance: a straight line was drawn");
    assertThat(bench.calibration().detectionLimit()).isEmpty();
  }

  @Test
  void threeStandardsAreTooFewForABend() {
    Bench bench = Bench.of(bent()).calibrate("n-1").calibrate("low").calibrate("high");
    assertThat(bench.calibration().remarks())
        .extracting(Reason::text)
        .containsExactly(
            "a bent low end needs 4 standards, there are 3: a straight line was drawn");
  }

  @Test
  void aStandardOffTheOthersIsRemarkedByName() {
    Bench bench = Bench.of(Setup.nitrate().standard("n-1", 1).standard("n-50", 50));
    bench.calibrate("n-1").calibrate("low").calibrate("mid").calibrate("high");
    assertThat(bench.calibration().flags()).isEmpty();
    bench.calibrateOff("n-50", -4);
    assertThat(bench.calibration().flags())
        .containsExactly("standards-scatter", "standard-outlying");
    assertThat(bench.calibration().remarks().get(1).text()).startsWith("standard n-50 lies -");
    assertThat(bench.calibration().points()).hasSize(5);
  }

  @Test
  void belowTheLimitItIsLessAndAboveItANumber() {
    Result number = measured(calibrated(), 0.31, 25);
    assertThat(number.concentration().orElseThrow().relation()).isEqualTo("=");
    assertThat(number.concentration().orElseThrow().value()).isCloseTo(0.31, within(1e-6));
    Result less = measured(calibrated(), 0.29, 25);
    assertThat(less.concentration().orElseThrow().relation()).isEqualTo("<");
    assertThat(less.concentration().orElseThrow().value()).isCloseTo(BEND, within(1e-6));
    assertThat(less.flags()).containsExactly("below-range");
  }

  @Test
  void whatIsLessThanNothingIsLessThanTheLimitToo() {
    Bench bench = calibrated();
    Result less = bench.tell("{\"do\":\"measure\"}").read(3, bench.millivolts(BEND / 2)).result();
    assertThat(less.concentration().orElseThrow().relation()).isEqualTo("<");
    assertThat(less.flags()).containsExactly("below-standards", "below-range");
  }

  @Test
  void theReportableRangeCountsWhereItBeginsAboveTheLimit() {
    Bench bench = Bench.of(bent().with(Changes.range(0.5, 80)));
    read(bench, "n-01", 0.1);
    read(bench, "n-1", 1);
    read(bench, "low", 5);
    read(bench, "high", 100);
    Result less = measured(bench, 0.4, 25);
    assertThat(less.concentration().orElseThrow().value()).isEqualTo(0.5);
    assertThat(less.concentration().orElseThrow().relation()).isEqualTo("<");
  }

  /** Written out as JSON and read again: curve, covariances and compensation. */
  @Test
  void afterARestartAResultIsTheSameToTheLastBit() {
    Bench bench = calibrated();
    Bench later = bench.restarted(bent(), Duration.ofMinutes(1));
    assertThat(later.remembered().inForce()).isEqualTo(bench.remembered().inForce());
    for (double celsius : new double[] {25, 11.3}) {
      for (double value : new double[] {0.2, 0.7, 33.3}) {
        Result before = measured(bench, value, celsius);
        Result after = measured(later, value, celsius);
        assertThat(after.concentration()).isEqualTo(before.concentration());
        assertThat(after.budget()).isEqualTo(before.budget());
        assertThat(after.flags()).isEqualTo(before.flags());
      }
    }
  }

  /** The curve taken up again is the one that the next standard alone is drawn on. */
  @Test
  void afterARestartOneStandardStandsOnTheSameCurve() {
    Bench bench = calibrated();
    measured(bench, 3, 25);
    Bench later = bench.restarted(bent(), Duration.ZERO);
    read(bench, "n-1", 1);
    read(later, "n-1", 1);
    assertThat(later.remembered().inForce().orElseThrow().curve())
        .isEqualTo(bench.remembered().inForce().orElseThrow().curve());
    assertThat(later.calibration().slopeFrom()).hasValue("last accepted");
    assertThat(later.calibration().detectionLimit())
        .isEqualTo(bench.calibration().detectionLimit());
  }
}
