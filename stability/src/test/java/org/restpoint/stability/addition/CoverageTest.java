package org.restpoint.stability.addition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.stability.addition.AdditionOutcome.Answer;
import org.restpoint.stability.preparation.Volume;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Contribution;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * How often the interval c ± 2u holds the true concentration, where slope, volumes and standard are
 * truly a little other than stated and potentials are read with noise. Normal distributions; 95.45
 * % if the uncertainty is right.
 */
class CoverageTest {

  /** Coverage is then known to 0.15 %. */
  private static final int TRIALS = 20_000;

  private static final double TRUE_CONCENTRATION = 9.3;
  private static final double STATED_SLOPE = -57.5;
  private static final double OFFSET = 230;

  /** True values, drawn about the stated ones. */
  private static final class Nature {

    private final Random random;

    Nature(long seed) {
      random = new Random(seed);
    }

    double draw(double stated, double standardUncertainty) {
      return stated + standardUncertainty * random.nextGaussian();
    }

    /** A potential as it is read. */
    double read(double slope, double concentration, double standardUncertainty) {
      return draw(OFFSET + slope * Math.log10(concentration), standardUncertainty);
    }
  }

  private static boolean covers(AdditionOutcome outcome, String largest) {
    Budget budget = ((Answer) outcome).concentration();
    assertThat(
            Collections.max(
                    budget.contributions(),
                    Comparator.comparingDouble(Contribution::standardUncertainty))
                .source()
                .name())
        .startsWith(largest);
    return Math.abs(budget.value() - TRUE_CONCENTRATION) <= budget.expandedUncertainty(2);
  }

  private static double percent(int covered) {
    return 100.0 * covered / TRIALS;
  }

  /** Nitrate in tile-drain water; then the same with a doubtful slope, and a doubtful standard. */
  @ParameterizedTest(name = "largest source: {0}")
  @CsvSource({"potential, 0.30, 0.3, 0.005", "slope, 0.05, 2.0, 0.005", "stock, 0.05, 0.2, 0.040"})
  void aKnownAdditionCoversTheTrueConcentration(
      String largest, double millivolts, double slope, double standard) {
    Nature nature = new Nature(20260608);
    KnownAddition method =
        new KnownAddition(
            Vessel.of(new Volume("sample", 100, 0.3), new Volume("adjustor", 2, 0.02)),
            new Volume("standard", 2, 0.01),
            Quantity.of("stock", "mg/L", 1000, 1000 * standard));
    int covered = 0;
    for (int trial = 0; trial < TRIALS; trial++) {
      double sample = nature.draw(100, 0.3);
      double vessel = sample + nature.draw(2, 0.02);
      double added = nature.draw(2, 0.01);
      double stock = nature.draw(1000, 1000 * standard);
      double trueSlope = nature.draw(STATED_SLOPE, slope);
      double amount = TRUE_CONCENTRATION * sample;
      double before = nature.read(trueSlope, amount / vessel, millivolts);
      double after =
          nature.read(trueSlope, (amount + stock * added) / (vessel + added), millivolts);
      PotentialStep step =
          PotentialStep.of(before, millivolts, after, millivolts, STATED_SLOPE, slope);
      covered += covers(method.of(step), largest) ? 1 : 0;
    }

    assertThat(percent(covered)).isCloseTo(95, within(1.0));
  }

  @ParameterizedTest(name = "largest source: {0}")
  @CsvSource({"potentials, 0.30, 0.2, 0.005", "slope, 0.10, 1.0, 0.005", "stock, 0.10, 0.2, 0.040"})
  void aGranPlotCoversTheTrueConcentration(
      String largest, double millivolts, double slope, double standard) {
    Nature nature = new Nature(20260609);
    int covered = 0;
    for (int trial = 0; trial < TRIALS; trial++) {
      double sample = nature.draw(50, 0.1);
      double vessel = sample + nature.draw(1, 0.01);
      double stock = nature.draw(500, 500 * standard);
      double scale = nature.draw(1, 0.003);
      double trueSlope = nature.draw(STATED_SLOPE, slope);
      List<GranPoint> points = new ArrayList<>();
      for (double stated = 0; stated <= 2.5; stated += 0.5) {
        double u = stated > 0 ? 0.003 : 0;
        double added = scale * nature.draw(stated, u);
        double inside = (TRUE_CONCENTRATION * sample + stock * added) / (vessel + added);
        points.add(
            new GranPoint(stated, u, nature.read(trueSlope, inside, millivolts), millivolts));
      }
      GranPlot plot =
          new GranPlot(
              Vessel.of(new Volume("sample", 50, 0.1), new Volume("adjustor", 1, 0.01)),
              Quantity.of("stock", "mg/L", 500, 500 * standard),
              0.003,
              points);
      Quantity electrode = Quantity.of("slope", "mV", STATED_SLOPE, slope);
      covered += covers(plot.of(electrode), largest) ? 1 : 0;
    }

    assertThat(percent(covered)).isCloseTo(95, within(1.0));
  }
}
