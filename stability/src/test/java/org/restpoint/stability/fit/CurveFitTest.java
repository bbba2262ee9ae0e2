package org.restpoint.stability.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.stability.Published;

class CurveFitTest {

  /** Of eleven certified digits, nine: the tenth is left to rounding on the way. */
  private static final double NINE_DIGITS_PERCENT = 1e-7;

  private static final class Adsorption implements CurveModel {
    private final double[] x;

    Adsorption(double[] x) {
      this.x = x;
    }

    @Override
    public double at(int i, double[] b) {
      return b[0] * -Math.expm1(-b[1] * x[i]);
    }

    @Override
    public void derivatives(int i, double[] b, double[] by) {
      by[0] = -Math.expm1(-b[1] * x[i]);
      by[1] = b[0] * x[i] * Math.exp(-b[1] * x[i]);
    }
  }

  private static final class Power implements CurveModel {
    private final double[] x;

    Power(double[] x) {
      this.x = x;
    }

    @Override
    public double at(int i, double[] b) {
      return b[0] * Math.pow(x[i], b[1]);
    }

    @Override
    public void derivatives(int i, double[] b, double[] by) {
      by[0] = Math.pow(x[i], b[1]);
      by[1] = b[0] * by[0] * Math.log(x[i]);
    }
  }

  private static final class Growth implements CurveModel {
    private final double[] x;

    Growth(double[] x) {
      this.x = x;
    }

    @Override
    public double at(int i, double[] b) {
      return b[0] / (1 + Math.exp(b[1] - b[2] * x[i]));
    }

    @Override
    public void derivatives(int i, double[] b, double[] by) {
      double e = Math.exp(b[1] - b[2] * x[i]);
      by[0] = 1 / (1 + e);
      by[1] = -b[0] * e / ((1 + e) * (1 + e));
      by[2] = -x[i] * by[1];
    }
  }

  private static double[] ones(int n) {
    double[] ones = new double[n];
    Arrays.fill(ones, 1);
    return ones;
  }

  private static void fits(
      CurveModel model, double[] y, double[] start, double squares, double... certified) {
    CurveFitOutcome outcome = CurveFit.USUAL.fit(model, y, ones(y.length), start);
    assertThat(outcome).isInstanceOf(CurveFitOutcome.Converged.class);
    CurveFitOutcome.Converged fit = (CurveFitOutcome.Converged) outcome;
    assertThat(fit.steps()).isLessThanOrEqualTo(CurveFit.USUAL.mostSteps() / 10);
    double chiSquare = fit.consistency().chiSquare();
    assertThat(chiSquare).isCloseTo(squares, withinPercentage(NINE_DIGITS_PERCENT));
    double s = Math.sqrt(chiSquare / fit.consistency().degreesOfFreedom());
    for (int k = 0; k < start.length; k++) {
      assertThat(fit.parameters().get(k))
          .isCloseTo(certified[2 * k], withinPercentage(NINE_DIGITS_PERCENT));
      assertThat(s * fit.covariance().standardUncertainty(k))
          .isCloseTo(certified[2 * k + 1], withinPercentage(NINE_DIGITS_PERCENT));
    }
  }

  @ParameterizedTest
  @CsvSource({"500, 0.0001", "250, 0.0005"})
  void misra1aGivesNistsCertifiedValues(double b1, double b2) {
    Published table = Published.table("misra1a");
    fits(
        new Adsorption(table.numbers("x")),
        table.numbers("y"),
        new double[] {b1, b2},
        1.2455138894E-01,
        2.3894212918E+02,
        2.7070075241E+00,
        5.5015643181E-04,
        7.2668688436E-06);
  }

  @ParameterizedTest
  @CsvSource({"1, 5", "0.7, 4"})
  void danWoodGivesNistsCertifiedValues(double b1, double b2) {
    Published table = Published.table("danwood");
    fits(
        new Power(table.numbers("x")),
        table.numbers("y"),
        new double[] {b1, b2},
        4.3173084083E-03,
        7.6886226176E-01,
        1.8281973860E-02,
        3.8604055871E+00,
        5.1726610913E-02);
  }

  @ParameterizedTest
  @CsvSource({"100, 1, 0.1", "75, 2.5, 0.07"})
  void rat42GivesNistsCertifiedValues(double b1, double b2, double b3) {
    Published table = Published.table("rat42");
    fits(
        new Growth(table.numbers("x")),
        table.numbers("y"),
        new double[] {b1, b2, b3},
        8.0565229338E+00,
        7.2462237576E+01,
        1.7340283401E+00,
        2.6180768402E+00,
        8.8295217536E-02,
        6.7359200066E-02,
        3.4465663377E-03);
  }

  @Test
  void theSensitivitiesSayWhatAChangeOfOnePointDoes() {
    Published table = Published.table("danwood");
    Power model = new Power(table.numbers("x"));
    double[] y = table.numbers("y");
    // Points on the curve itself: off it the second derivatives of the model come in as well.
    for (int i = 0; i < y.length; i++) {
      y[i] = model.at(i, new double[] {0.77, 3.86});
    }
    double[] u = {1, 2, 1, 2, 1, 2};
    CurveFitOutcome.Converged before =
        (CurveFitOutcome.Converged) CurveFit.USUAL.fit(model, y, u, 0.7, 4);
    double step = 1e-5;
    y[3] += step;
    CurveFitOutcome.Converged after =
        (CurveFitOutcome.Converged) CurveFit.USUAL.fit(model, y, u, 0.7, 4);
    for (int k = 0; k < 2; k++) {
      double seen = (after.parameters().get(k) - before.parameters().get(k)) / step;
      assertThat(before.sensitivities().get(k).get(3)).isCloseTo(seen, withinPercentage(0.1));
    }
  }

  @Test
  void exactPointsConvergeWithNothingLeftOver() {
    double[] x = {1, 2, 3};
    Power model = new Power(x);
    double[] y = {3, 3 * Math.sqrt(2), 3 * Math.sqrt(3)};
    CurveFitOutcome.Converged fit =
        (CurveFitOutcome.Converged) CurveFit.USUAL.fit(model, y, ones(3), 1, 1);
    assertThat(fit.parameters().get(0)).isCloseTo(3, withinPercentage(1e-9));
    assertThat(fit.parameters().get(1)).isCloseTo(0.5, withinPercentage(1e-9));
    assertThat(fit.consistency().chiSquare()).isLessThan(1e-20);
  }

  private static CurveFitOutcome.Reason reason(CurveFitOutcome outcome) {
    return ((CurveFitOutcome.NotConverged) outcome).reason();
  }

  @Test
  void whatDoesNotConvergeSaysWhy() {
    Power model = new Power(new double[] {1, 1, 1});
    double[] y = {1, 2, 3};
    assertThat(
            reason(
                CurveFit.USUAL.fit(new Power(new double[] {2}), new double[] {2}, ones(1), 1, 1)))
        .isEqualTo(CurveFitOutcome.Reason.TOO_FEW_POINTS);
    // At x = 1 the exponent has no say.
    assertThat(reason(CurveFit.USUAL.fit(model, y, ones(3), 1, 1)))
        .isEqualTo(CurveFitOutcome.Reason.UNDETERMINED);
    assertThat(reason(CurveFit.USUAL.fit(model, y, ones(3), Double.NaN, 1)))
        .isEqualTo(CurveFitOutcome.Reason.NO_START);
    Published table = Published.table("misra1a");
    assertThat(
            reason(
                new CurveFit(1)
                    .fit(
                        new Adsorption(table.numbers("x")),
                        table.numbers("y"),
                        ones(14),
                        500,
                        1e-4)))
        .isEqualTo(CurveFitOutcome.Reason.TOO_MANY_STEPS);
    assertThatThrownBy(() -> new CurveFit(0)).hasMessageContaining("1 step or more");
  }

  @Test
  void derivativesThatPointTheWrongWayStall() {
    double[] x = {1, 2, 3};
    CurveModel wrong =
        new CurveModel() {
          @Override
          public double at(int i, double[] b) {
            return b[0] * x[i];
          }

          @Override
          public void derivatives(int i, double[] b, double[] by) {
            by[0] = -x[i];
          }
        };
    assertThat(reason(CurveFit.USUAL.fit(wrong, new double[] {2, 4, 6}, ones(3), 1)))
        .isEqualTo(CurveFitOutcome.Reason.STALLED);
  }
}
