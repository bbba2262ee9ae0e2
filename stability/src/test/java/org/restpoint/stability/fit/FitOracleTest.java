package org.restpoint.stability.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DiagonalMatrix;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.stat.regression.GLSMultipleLinearRegression;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;
import org.hipparchus.util.Pair;

/** Hipparchus' fits of the same random points, by other methods than ours. */
class FitOracleTest {

  /** Both lose a few of sixteen digits to the condition of the points. */
  private static final double NEARLY_ALL_DIGITS = 1e-9;

  private static double scaled(double ours, double theirs) {
    return (ours - theirs) / Math.max(1, Math.abs(theirs));
  }

  private static void same(double ours, double theirs) {
    assertThat(scaled(ours, theirs)).isCloseTo(0, within(NEARLY_ALL_DIGITS));
  }

  private record Points(List<double[]> rows) {
    static Points random(Random random, int n) {
      List<double[]> rows = new ArrayList<>();
      for (int i = 0; i < n; i++) {
        double x = -6 + i + 0.5 * random.nextDouble();
        double u = 0.1 + random.nextDouble();
        rows.add(new double[] {x, 200 + 58 * x + 3 * random.nextGaussian(), u});
      }
      return new Points(rows);
    }

    double[] column(int index) {
      return rows.stream().mapToDouble(row -> row[index]).toArray();
    }
  }

  @Property
  void anUnweightedLineIsHipparchusWithItsErrorsAndItsHatMatrix(
      @ForAll Random random, @ForAll @IntRange(min = 3, max = 12) int n) {
    Points points = Points.random(random, n);
    double[] x = points.column(0);
    double[] y = points.column(1);
    double[] u = new double[n];
    Arrays.fill(u, 1);
    OLSMultipleLinearRegression theirs = new OLSMultipleLinearRegression();
    double[][] design = new double[n][];
    for (int i = 0; i < n; i++) {
      design[i] = new double[] {x[i]};
    }
    theirs.newSampleData(y, design);
    WeightedLine ours = WeightedLine.through(x, y, u);
    double s = ours.residualDeviation().orElseThrow();
    LineEstimate scattered = ours.estimate().inflatedBy(s);
    double[] parameters = theirs.estimateRegressionParameters();
    double[] errors = theirs.estimateRegressionParametersStandardErrors();
    same(ours.estimate().intercept(), parameters[0]);
    same(ours.estimate().slope(), parameters[1]);
    same(Math.sqrt(scattered.interceptVariance()), errors[0]);
    same(Math.sqrt(scattered.slopeVariance()), errors[1]);
    same(s, theirs.estimateRegressionStandardError());
    same(ours.determination(), theirs.calculateRSquared());
    same(
        scattered.covariance(),
        theirs.estimateRegressionParametersVariance()[0][1] * theirs.estimateErrorVariance());
    RealMatrix hat = theirs.calculateHat();
    double[] residuals = theirs.estimateResiduals();
    for (int i = 0; i < n; i++) {
      same(ours.points().get(i).leverage(), hat.getEntry(i, i));
      same(ours.points().get(i).residual(), residuals[i]);
    }
  }

  @Property
  void aWeightedLineIsHipparchusGeneralLeastSquares(
      @ForAll Random random, @ForAll @IntRange(min = 3, max = 12) int n) {
    Points points = Points.random(random, n);
    double[] u = points.column(2);
    double[][] design = new double[n][];
    double[][] covariance = new double[n][n];
    for (int i = 0; i < n; i++) {
      design[i] = new double[] {points.column(0)[i]};
      covariance[i][i] = u[i] * u[i];
    }
    GLSMultipleLinearRegression theirs = new GLSMultipleLinearRegression();
    theirs.newSampleData(points.column(1), design, covariance);
    LineEstimate ours = WeightedLine.through(points.column(0), points.column(1), u).estimate();
    double[] parameters = theirs.estimateRegressionParameters();
    double[][] variance = theirs.estimateRegressionParametersVariance();
    same(ours.intercept(), parameters[0]);
    same(ours.slope(), parameters[1]);
    same(ours.interceptVariance(), variance[0][0]);
    same(ours.slopeVariance(), variance[1][1]);
    same(ours.covariance(), variance[0][1]);
  }

  @Property
  void aStudentizedResidualIsThatOfThePointAgainstTheLineOfTheOthers(
      @ForAll Random random, @ForAll @IntRange(min = 4, max = 9) int n) {
    Points points = Points.random(random, n);
    WeightedLine line = WeightedLine.through(points.column(0), points.column(1), points.column(2));
    int left = random.nextInt(n);
    List<double[]> rows = new ArrayList<>(points.rows());
    double[] out = rows.remove(left);
    Points rest = new Points(rows);
    WeightedLine others = WeightedLine.through(rest.column(0), rest.column(1), rest.column(2));
    double chance = others.consistency().chiSquare() / others.consistency().degreesOfFreedom();
    double expected =
        (out[1] - others.estimate().at(out[0]))
            / Math.sqrt(chance * (out[2] * out[2] + others.estimate().varianceAt(out[0])));
    // A large one divides by what little is off among the others.
    assertThat(scaled(line.externallyStudentized(left).orElseThrow(), expected))
        .isCloseTo(0, within(1e-6));
  }

  @Property(tries = 300)
  void aLowEndCurveIsTheLeastSquaresOfHipparchus(
      @ForAll Random random,
      @ForAll @IntRange(min = 5, max = 10) int n,
      @ForAll @DoubleRange(min = -5.5, max = -3.5) double logBackground) {
    double[] c = new double[n];
    double[] tau = new double[n];
    double[] y = new double[n];
    double[] u = new double[n];
    double background = Math.pow(10, logBackground);
    for (int i = 0; i < n; i++) {
      c[i] = Math.pow(10, -6 + 5.0 * i / (n - 1) + 0.1 * random.nextDouble());
      tau[i] = 0.97 + 0.06 * random.nextDouble();
      u[i] = 0.2 + random.nextDouble();
      y[i] = 80 - 58 * tau[i] * Math.log10(c[i] + background) + u[i] * random.nextGaussian();
    }
    LowEndModel model = new LowEndModel(c, tau);
    double[] weights = new double[n];
    for (int i = 0; i < n; i++) {
      weights[i] = 1 / (u[i] * u[i]);
    }
    LeastSquaresOptimizer.Optimum theirs =
        new LevenbergMarquardtOptimizer()
            .optimize(
                new LeastSquaresBuilder()
                    .start(new double[] {80, -58, Math.log(background)})
                    .target(y)
                    .weight(new DiagonalMatrix(weights))
                    .lazyEvaluation(false)
                    .maxEvaluations(1000)
                    .maxIterations(1000)
                    .model(
                        point -> {
                          double[] p = point.toArray();
                          double[] value = new double[n];
                          double[][] jacobian = new double[n][3];
                          for (int i = 0; i < n; i++) {
                            value[i] = model.at(i, p);
                            model.derivatives(i, p, jacobian[i]);
                          }
                          return new Pair<>(
                              new ArrayRealVector(value, false),
                              new Array2DRowRealMatrix(jacobian, false));
                        })
                    .build());
    LowEndFit fit = LowEndStandards.of(c, tau, y, u).fit(0.05);
    assertThat(fit).isInstanceOf(LowEndFit.Curved.class);
    LowEndCurve ours = ((LowEndFit.Curved) fit).curve();
    double[] p = theirs.getPoint().toArray();
    RealMatrix covariance = theirs.getCovariances(1e-14);
    // Hipparchus stops at a relative change of 1e-10 in the sum, 1e-5 of an uncertainty.
    double[] parameters = {ours.offset(), ours.slope(), Math.log(ours.background())};
    double[] scale = {1, 1, 1 / ours.background()};
    for (int k = 0; k < 3; k++) {
      double uncertainty = Math.sqrt(covariance.getEntry(k, k));
      assertThat((parameters[k] - p[k]) / uncertainty).isCloseTo(0, within(1e-4));
      assertThat(ours.covariance().standardUncertainty(k) * scale[k] / uncertainty)
          .isCloseTo(1, within(1e-4));
    }
    double cost = theirs.getCost();
    assertThat(ours.consistency().chiSquare()).isLessThanOrEqualTo(cost * cost * (1 + 1e-9));
  }
}
