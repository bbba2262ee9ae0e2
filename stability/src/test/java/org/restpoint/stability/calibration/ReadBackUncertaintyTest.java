package org.restpoint.stability.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The uncertainty that {@link ResponseCurve#read} gives against the scatter of simulated
 * calibrations (JCGM 101:2008): standards prepared not quite as labelled, potentials read not quite
 * as they are, no temperature terms.
 *
 * <p>The line whose uncertainty is asked is drawn through errorless standards: from three points on
 * a residual larger than expected would otherwise widen it, which is meant, but not simulated here.
 */
class ReadBackUncertaintyTest {

  private static final int TRIALS = 25_000;
  private static final double SLOPE = -57.5;
  private static final double READING_MILLIVOLTS = 0.5;
  private static final double RELATIVE = 0.01;

  /**
   * A standard deviation of 25 000 trials is known to 1/√(2·25 000) = 0.45 %; the terms beyond the
   * first order are (u(S)/S)² ≈ 0.02 %. Four and a half times the first.
   */
  private static final double TOLERANCE_PERCENT = 2;

  private static final Calibrator NITRATE = new Calibrator(-1, new SlopeLimits(50, 150));

  private static StandardPoint standard(double logarithm, double errorMillivolts) {
    double millivolts = 80 + SLOPE * logarithm + errorMillivolts;
    return Standards.at(Math.pow(10, logarithm), RELATIVE, millivolts, READING_MILLIVOLTS, 25);
  }

  private static ResponseCurve drawn(List<StandardPoint> points) {
    return NITRATE.judge(points, Optional.empty()).curve().orElseThrow();
  }

  @ParameterizedTest(name = "{0} standards, sample at 10^{1} mol/L")
  @CsvSource({"2, -3.0", "2, -2.4", "2, -4.7", "3, -3.0", "3, -2.4", "3, -4.7"})
  void theStatedUncertaintyIsTheScatterOfSimulatedResults(int standards, double sample) {
    double[] logarithms = standards == 2 ? new double[] {-4, -2} : new double[] {-4, -3, -2};
    Random random = new Random(20260402);
    double sum = 0;
    double squares = 0;
    for (int trial = 0; trial < TRIALS; trial++) {
      List<StandardPoint> points = new ArrayList<>();
      for (double logarithm : logarithms) {
        double preparation = SLOPE * Math.log10(1 + RELATIVE * random.nextGaussian());
        points.add(standard(logarithm, preparation + READING_MILLIVOLTS * random.nextGaussian()));
      }
      double seen = 80 + SLOPE * sample + READING_MILLIVOLTS * random.nextGaussian();
      double error =
          drawn(points).read(RestedSample.of(seen, READING_MILLIVOLTS, 25, 0)).log10MolesPerLitre()
              - sample;
      sum += error;
      squares += error * error;
    }
    double mean = sum / TRIALS;
    double scatter = Math.sqrt((squares - TRIALS * mean * mean) / (TRIALS - 1));

    List<StandardPoint> errorless = new ArrayList<>();
    for (double logarithm : logarithms) {
      errorless.add(standard(logarithm, 0));
    }
    double stated =
        drawn(errorless)
                .read(RestedSample.of(80 + SLOPE * sample, READING_MILLIVOLTS, 25, 0))
                .relativeStandardUncertainty()
            / Math.log(10);
    assertThat(stated).isCloseTo(scatter, withinPercentage(TOLERANCE_PERCENT));
  }
}
