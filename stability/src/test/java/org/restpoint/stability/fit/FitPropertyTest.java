package org.restpoint.stability.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** Units, signs and order change the results of a fit as they must, and not otherwise. */
class FitPropertyTest {

  /** In doubles, after a few dozen operations. */
  private static final double ROUNDING = 1e-9;

  private static double[] map(double[] values, DoubleUnaryOperator function) {
    return Arrays.stream(values).map(function).toArray();
  }

  private static void close(double ours, double expected) {
    assertThat(ours).isCloseTo(expected, within(ROUNDING * Math.max(1, Math.abs(expected))));
  }

  private static final class Points {
    final double[] c;
    final double[] y;
    final double[] u;
    final double[] tau;

    Points(Random random, int n, double background) {
      c = new double[n];
      y = new double[n];
      u = new double[n];
      tau = new double[n];
      for (int i = 0; i < n; i++) {
        c[i] = Math.pow(10, -6 + 5.0 * i / (n - 1) + 0.1 * random.nextDouble());
        u[i] = 0.1 + random.nextDouble();
        tau[i] = 1;
        y[i] = 80 - 58 * Math.log10(c[i] + background) + u[i] * random.nextGaussian();
      }
    }

    WeightedLine line() {
      return WeightedLine.through(map(c, Math::log10), y, u);
    }
  }

  @Property
  void pointsOfOneUncertaintyGiveThePlainLineToTheLastBit(
      @ForAll Random random,
      @ForAll @IntRange(min = 2, max = 9) int n,
      @ForAll @DoubleRange(min = 0.01, max = 100) double uncertainty) {
    Points points = new Points(random, n, 0);
    double[] x = map(points.c, Math::log10);
    StraightLine plain = StraightLine.through(x, points.y);
    WeightedLine line = WeightedLine.through(x, points.y, map(x, v -> uncertainty));
    assertThat(line.estimate().slope()).isEqualTo(plain.slope());
    assertThat(line.estimate().intercept()).isEqualTo(plain.intercept());
    assertThat(line.determination()).isEqualTo(plain.determination());
    close(line.estimate().slopeVariance(), plain.slopeVariance(uncertainty));
    close(line.estimate().interceptVariance(), plain.interceptVariance(uncertainty));
    close(line.estimate().covariance(), plain.covariance(uncertainty));
    close(line.residualDeviation().orElse(-1), plain.residualDeviation().orElse(-1));
  }

  @Property
  void voltsForMillivoltsScaleTheLineAndItsUncertainties(
      @ForAll Random random, @ForAll @IntRange(min = 4, max = 9) int n) {
    Points points = new Points(random, n, 0);
    double[] x = map(points.c, Math::log10);
    WeightedLine line = points.line();
    WeightedLine other =
        WeightedLine.through(x, map(points.y, v -> v / 1000), map(points.u, v -> v / 1000));
    close(other.estimate().slope() * 1000, line.estimate().slope());
    close(other.estimate().intercept() * 1000, line.estimate().intercept());
    close(other.estimate().slopeVariance() * 1e6, line.estimate().slopeVariance());
    close(other.consistency().chiSquare(), line.consistency().chiSquare());
    double studentized = line.externallyStudentized(1).orElseThrow();
    // A large one divides by what little is off among the others.
    assertThat(other.externallyStudentized(1).orElseThrow())
        .isCloseTo(studentized, within(1e-6 * Math.max(1, Math.abs(studentized))));
  }

  @Property
  void aShiftOfXMovesTheInterceptAndNothingElse(
      @ForAll Random random,
      @ForAll @IntRange(min = 3, max = 9) int n,
      @ForAll @DoubleRange(min = -6, max = 6) double shift) {
    Points points = new Points(random, n, 0);
    LineEstimate line = points.line().estimate();
    LineEstimate other =
        WeightedLine.through(map(points.c, v -> Math.log10(v) + shift), points.y, points.u)
            .estimate();
    close(other.slope(), line.slope());
    close(other.intercept(), line.at(-shift));
    close(other.interceptVariance(), line.varianceAt(-shift));
    InversePrediction read = line.readBack(300, 0.5);
    InversePrediction shifted = other.readBack(300, 0.5);
    close(shifted.x(), read.x() + shift);
    close(shifted.standardUncertainty(), read.standardUncertainty());
    FiellerInterval.Bounded one = (FiellerInterval.Bounded) read.fieller(2);
    FiellerInterval.Bounded two = (FiellerInterval.Bounded) shifted.fieller(2);
    close(two.lower(), one.lower() + shift);
    close(two.upper(), one.upper() + shift);
  }

  @Property
  void theSensitivitiesAddUpToTheLineAndItsCovariance(
      @ForAll Random random, @ForAll @IntRange(min = 2, max = 9) int n) {
    WeightedLine line = new Points(random, n, 0).line();
    double intercept = 0;
    double slope = 0;
    double interceptVariance = 0;
    double covariance = 0;
    double leverage = 0;
    for (FittedPoint point : line.points()) {
      double variance = point.standardUncertainty() * point.standardUncertainty();
      intercept += point.interceptSensitivity() * point.y();
      slope += point.slopeSensitivity() * point.y();
      interceptVariance += Math.pow(point.interceptSensitivity(), 2) * variance;
      covariance += point.interceptSensitivity() * point.slopeSensitivity() * variance;
      leverage += point.leverage();
    }
    close(intercept, line.estimate().intercept());
    close(slope, line.estimate().slope());
    close(interceptVariance, line.estimate().interceptVariance());
    close(covariance, line.estimate().covariance());
    close(leverage, 2);
  }

  private static LowEndCurve curved(Points points, double[] c, double[] y) {
    LowEndFit fit = LowEndStandards.of(c, points.tau, y, points.u).fit(0.05);
    assertThat(fit).isInstanceOf(LowEndFit.Curved.class);
    return ((LowEndFit.Curved) fit).curve();
  }

  @Property(tries = 200)
  void anotherUnitOfConcentrationMovesTheOffsetAndTheBackground(
      @ForAll Random random,
      @ForAll @IntRange(min = 5, max = 9) int n,
      @ForAll @DoubleRange(min = 0.01, max = 100_000) double factor) {
    Points points = new Points(random, n, 1e-4);
    LowEndCurve curve = curved(points, points.c, points.y);
    LowEndCurve other = curved(points, map(points.c, v -> v * factor), points.y);
    // The search ends within 1e-9 of an uncertainty wherever it came from, and takes a sum of
    // squares to its last digits: half of them are left for the parameters.
    double alike = 1e-6;
    assertThat(other.slope()).isCloseTo(curve.slope(), within(alike));
    assertThat(other.offset())
        .isCloseTo(curve.offset() - curve.slope() * Math.log10(factor), within(10 * alike));
    assertThat(other.background() / factor / curve.background()).isCloseTo(1, within(alike));
    assertThat(other.consistency().chiSquare())
        .isCloseTo(curve.consistency().chiSquare(), within(alike));
    assertThat(other.concentrationUncertainty(300, 0.3, 1) / factor)
        .isCloseTo(curve.concentrationUncertainty(300, 0.3, 1), within(alike));
  }

  @Property(tries = 200)
  void theOppositeChargeMirrorsTheCurveAndTheOrderDoesNotMatter(
      @ForAll Random random, @ForAll @IntRange(min = 5, max = 9) int n) {
    Points points = new Points(random, n, 1e-4);
    LowEndCurve curve = curved(points, points.c, points.y);
    LowEndCurve mirrored = curved(points, points.c, map(points.y, v -> -v));
    assertThat(mirrored.slope()).isCloseTo(-curve.slope(), within(1e-6));
    assertThat(mirrored.background() / curve.background()).isCloseTo(1, within(1e-6));
    double[] c = new double[n];
    double[] y = new double[n];
    double[] u = new double[n];
    for (int i = 0; i < n; i++) {
      c[i] = points.c[n - 1 - i];
      y[i] = points.y[n - 1 - i];
      u[i] = points.u[n - 1 - i];
    }
    LowEndFit reversed = LowEndStandards.of(c, points.tau, y, u).fit(0.05);
    assertThat(((LowEndFit.Curved) reversed).curve().background() / curve.background())
        .isCloseTo(1, within(1e-6));
  }
}
