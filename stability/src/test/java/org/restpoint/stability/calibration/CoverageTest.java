package org.restpoint.stability.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.stability.uncertainty.Budget;

/**
 * How often the expanded uncertainty (k = 2) of the direct method covers the truth (JCGM 101:2008):
 * electrode, standards and sample drawn anew each time, each standard made a little off its label,
 * all of them from a stock a little off as well, every potential and temperature a little misread.
 */
class CoverageTest {

  private static final int TRIALS = 20_000;
  private static final double READING_MILLIVOLTS = 0.15;
  private static final double RELATIVE = 0.01;
  private static final double STOCK = 0.005;
  private static final double KELVIN = 0.3;

  /** 95 ± 1 %; k = 2 of a normal distribution is 95.45 %, and 20 000 trials know it to 0.15 %. */
  @ParameterizedTest(name = "standards at 10^({0}), sample at 10^{1} mol/L, {2}")
  @CsvSource({
    "-4 -2,       -3.0, STRAIGHT",
    "-4 -3 -2,    -3.3, STRAIGHT",
    "-4 -3 -2,    -4.6, STRAIGHT",
    "-5 -4 -3 -2, -2.4, STRAIGHT",
    "-3,          -3.4, ONE",
    "-6 -5 -4 -3 -2, -4.5, CURVED",
  })
  void theDirectMethodCoversTheTruthAsOftenAsItSays(
      String standards, double sample, String method) {
    Random random = new Random(20260402);
    int covered = 0;
    for (int trial = 0; trial < TRIALS; trial++) {
      covered += covers(standards.split(" "), sample, method, random) ? 1 : 0;
    }

    assertThat(100.0 * covered / TRIALS).isCloseTo(95, within(1.0));
  }

  private static boolean covers(String[] standards, double sample, String method, Random random) {
    double lowEnd = method.equals("CURVED") ? 4e-6 : 0;
    double slope = -59.159 * (0.95 + 0.05 * random.nextDouble());
    ResponseCurve truth =
        new ResponseCurve(
            80 * random.nextGaussian(),
            slope,
            lowEnd,
            25,
            Compensation.isopotential(-3, 0),
            ResponseCurve.NO_DOUBT,
            ResponseCurve.NO_DOUBT);
    Calibrator calibrator =
        new Calibrator(
            -1,
            new SlopeLimits(80, 110),
            method.equals("CURVED") ? new LowEnd.Curved() : new LowEnd.Straight(),
            Compensation.isopotential(-3, 0),
            STOCK);
    double stock = 1 + STOCK * random.nextGaussian();
    List<StandardPoint> points = new ArrayList<>();
    for (String logarithm : standards) {
      double label = Math.pow(10, Double.parseDouble(logarithm));
      double made = label * stock * (1 + RELATIVE * random.nextGaussian());
      double seen = truth.millivoltsAt(made, 25) + READING_MILLIVOLTS * random.nextGaussian();
      points.add(Standards.at(label, RELATIVE, seen, READING_MILLIVOLTS, 25));
    }
    Optional<ResponseCurve> last =
        method.equals("ONE") ? Optional.of(slopeKnown(slope, random)) : Optional.empty();
    ResponseCurve curve = calibrator.judge(points, last).curve().orElseThrow();
    double celsius = 18;
    double seen =
        truth.millivoltsAt(Math.pow(10, sample), celsius)
            + READING_MILLIVOLTS * random.nextGaussian();
    double read = celsius + KELVIN * random.nextGaussian();
    Budget budget =
        curve
            .read(RestedSample.of(seen, READING_MILLIVOLTS, read, KELVIN))
            .budget("c", "mol/L", c -> c);
    return Math.abs(budget.value() - Math.pow(10, sample)) <= budget.expandedUncertainty(2);
  }

  /** An earlier curve whose slope is known to 0.4 mV/decade. */
  private static ResponseCurve slopeKnown(double slope, Random random) {
    double deviation = 0.4;
    return Standards.curve(
        0, slope + deviation * random.nextGaussian(), 25, 0, deviation * deviation, 0);
  }
}
