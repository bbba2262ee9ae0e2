package org.restpoint.stability.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.stability.Published;

class InversePredictionTest {

  private static LineEstimate fluorescein(double uncertainty) {
    Published table = Published.table("fluorescein");
    double[] u = new double[7];
    Arrays.fill(u, uncertainty);
    return WeightedLine.through(
            table.numbers("picogramsPerMillilitre"), table.numbers("intensity"), u)
        .estimate();
  }

  @ParameterizedTest
  @CsvSource({"2.9, 0.72, 0.26", "13.5, 6.21, 0.24", "23.0, 11.13, 0.26"})
  void theBooksIntensitiesReadBackWithItsStandardDeviations(
      double intensity, double picograms, double deviation) {
    double s = 0.4329;
    InversePrediction read = fluorescein(s).readBack(intensity, s);
    // Within half of the last digit printed.
    assertThat(read.x()).isCloseTo(picograms, within(0.005));
    assertThat(read.standardUncertainty()).isCloseTo(deviation, within(0.005));
    // The book's 95 % limits, ± 0.68, 0.62, 0.68 by ± t·s(x0) rounded on the way; Fieller's lie
    // within a tenth of that.
    double k = new StudentT(5).coverageFactor(0.95);
    assertThat(read.fieller(k))
        .asInstanceOf(InstanceOfAssertFactories.type(FiellerInterval.Bounded.class))
        .satisfies(
            interval ->
                assertThat((interval.upper() - interval.lower()) / 2)
                    .isCloseTo(k * deviation, within(0.068)));
  }

  @Property
  void theEndsOfTheIntervalAreWhereTheReadingJustContradictsTheLine(
      @ForAll @DoubleRange(min = -300, max = 300) double y0,
      @ForAll @DoubleRange(min = 20, max = 60) double slope,
      @ForAll @DoubleRange(min = 0.1, max = 5) double slopeUncertainty,
      @ForAll @DoubleRange(min = -0.99, max = 0.99) double correlation) {
    double interceptUncertainty = 3;
    LineEstimate line =
        new LineEstimate(
            12,
            slope,
            interceptUncertainty * interceptUncertainty,
            slopeUncertainty * slopeUncertainty,
            correlation * interceptUncertainty * slopeUncertainty);
    InversePrediction read = line.readBack(y0, 0.5);
    assertThat(read.fieller(2))
        .asInstanceOf(InstanceOfAssertFactories.type(FiellerInterval.Bounded.class))
        .satisfies(
            interval -> {
              assertThat(read.x()).isBetween(interval.lower(), interval.upper());
              for (double end : new double[] {interval.lower(), interval.upper()}) {
                double apart = Math.abs(line.at(end) - y0);
                double allowed = 2 * Math.sqrt(0.25 + line.varianceAt(end));
                assertThat(apart).isCloseTo(allowed, within(1e-9 * (1 + allowed)));
              }
            });
  }

  @Test
  void nineteenIntervalsInTwentyHoldTheTrueXHoweverWeakTheSlope() {
    Random random = new Random(1954);
    double[] x = {-5, -4, -3};
    double[] u = {1, 2, 1};
    int holding = 0;
    int unbounded = 0;
    int runs = 20_000;
    double k = StudentT.normal().coverageFactor(0.95);
    for (int run = 0; run < runs; run++) {
      double[] y = new double[3];
      for (int i = 0; i < 3; i++) {
        // A slope of 2 known to 0.7: nearly as often nothing as something.
        y[i] = 2 * x[i] + u[i] * random.nextGaussian();
      }
      double reading = 2 * -2 + 0.5 * random.nextGaussian();
      InversePrediction read = WeightedLine.through(x, y, u).estimate().readBack(reading, 0.5);
      double apart = Math.abs(read.line().at(-2) - reading);
      double allowed = k * Math.sqrt(0.25 + read.line().varianceAt(-2));
      if (read.fieller(k) instanceof FiellerInterval.Bounded interval) {
        boolean inside = interval.lower() <= -2 && -2 <= interval.upper();
        assertThat(inside).isEqualTo(apart <= allowed);
        holding += inside ? 1 : 0;
      } else {
        unbounded++;
        holding += apart <= allowed ? 1 : 0;
      }
    }
    // √(0.95·0.05/20000) = 0.0015; three of those.
    assertThat((double) holding / runs).isCloseTo(0.95, within(0.0046));
    assertThat(unbounded).isPositive();
  }

  @Test
  void aSlopeThatMayBeZeroHasNoFiniteInterval() {
    LineEstimate line = new LineEstimate(0, 10, 1, 25, 0);
    assertThat(line.readBack(5, 1).fieller(2)).isEqualTo(new FiellerInterval.Unbounded(2, 2));
    assertThat(line.readBack(5, 1).fieller(1.99)).isInstanceOf(FiellerInterval.Bounded.class);
  }

  @Test
  void anExactLineReadsBackOnePoint() {
    LineEstimate line = new LineEstimate(1, 2, 0, 0, 0);
    assertThat(line.readBack(5, 0).fieller(2)).isEqualTo(new FiellerInterval.Bounded(2, 2));
    assertThat(line.readBack(5, 0).standardUncertainty()).isZero();
  }

  @Test
  void aSurelySteepLineHasTheIntervalOfFirstOrder() {
    InversePrediction read = fluorescein(1e-4).readBack(13.5, 1e-4);
    assertThat(read.fieller(2))
        .asInstanceOf(InstanceOfAssertFactories.type(FiellerInterval.Bounded.class))
        .satisfies(
            interval -> {
              // They part only in the second order of u(b)/b, 10⁻⁵ of the width here.
              double half = 2 * read.standardUncertainty();
              assertThat(interval.upper()).isCloseTo(read.x() + half, within(1e-4 * half));
              assertThat(interval.lower()).isCloseTo(read.x() - half, within(1e-4 * half));
            });
  }

  @Test
  void aLevelLineReadsNothingBack() {
    LineEstimate level = new LineEstimate(1, 0, 1, 1, 0);
    assertThatThrownBy(() -> level.readBack(1, 1))
        .hasMessage("a line of slope 0 reads nothing back");
    LineEstimate line = new LineEstimate(1, 1, 1, 1, 0);
    assertThatThrownBy(() -> line.readBack(Double.NaN, 1)).hasMessageContaining("finite");
    assertThatThrownBy(() -> line.readBack(1, -1)).hasMessageContaining("0 or above");
    assertThatThrownBy(() -> line.readBack(1, 1).fieller(0)).hasMessageContaining("above 0");
  }
}
