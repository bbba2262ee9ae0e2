package org.restpoint.stability.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;
import org.restpoint.stability.uncertainty.Source.Joint;
import org.restpoint.stability.uncertainty.Source.Quantity;

class BudgetTest {

  private static double mean(double[] values) {
    return Arrays.stream(values).average().orElseThrow();
  }

  private static double covarianceOfMeans(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += (a[i] - mean(a)) * (b[i] - mean(b));
    }
    return sum / (a.length * (a.length - 1.0));
  }

  /** Figures as printed, so to half of their last digit; 0.2956 is printed as 0.295. */
  @Test
  void correlatedInputsGiveTheGuidesResistanceReactanceAndImpedance() {
    Published table = Published.table("impedance");
    List<double[]> columns =
        List.of(table.numbers("V"), table.numbers("I_mA"), table.numbers("phi"));
    Joint observed =
        Joint.of(
            "V, I and phase",
            columns.stream().map(BudgetTest::mean).toList(),
            columns.stream()
                .map(a -> columns.stream().map(b -> covarianceOfMeans(a, b)).toList())
                .toList());
    List<Joint> sources = List.of(observed);

    Budget resistance = Budget.of("R", "Ohm", sources, x -> 1000 * x[0] / x[1] * Math.cos(x[2]));
    Budget reactance = Budget.of("X", "Ohm", sources, x -> 1000 * x[0] / x[1] * Math.sin(x[2]));
    Budget impedance = Budget.of("Z", "Ohm", sources, x -> 1000 * x[0] / x[1]);

    assertThat(resistance.value()).isCloseTo(127.732, within(0.0005));
    assertThat(resistance.standardUncertainty()).isCloseTo(0.071, within(0.0005));
    assertThat(reactance.value()).isCloseTo(219.847, within(0.0005));
    assertThat(reactance.standardUncertainty()).isCloseTo(0.295, within(0.001));
    assertThat(impedance.value()).isCloseTo(254.260, within(0.0005));
    assertThat(impedance.standardUncertainty()).isCloseTo(0.236, within(0.0005));
  }

  /** The guide prints 32 nm and truncates 16.7 degrees of freedom to 16. */
  @Test
  void anEndGaugeHasTheGuidesUncertaintyAndEffectiveDegreesOfFreedom() {
    Published table = Published.table("end-gauge");
    double[] values = table.numbers("value");
    double[] uncertainties = table.numbers("standardUncertainty");
    double[] freedom = table.numbers("degreesOfFreedom");
    List<Quantity> sources = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      sources.add(
          new Quantity(
              table.texts("source").get(i), "nm", values[i], uncertainties[i], freedom[i]));
    }

    Budget length =
        Budget.of(
            "l",
            "nm",
            sources,
            x -> x[0] + x[1] + x[2] + x[3] - x[0] * (x[4] * x[5] + x[6] * x[7]));

    assertThat(length.value()).isCloseTo(50_000_838, within(0.5));
    assertThat(length.standardUncertainty()).isCloseTo(32, within(0.5));
    assertThat(Math.floor(length.effectiveDegreesOfFreedom())).isEqualTo(16);
  }

  @Test
  void theSharesOfAProductAddUpAndFollowTheSquaresOfTheRelativeUncertainties() {
    Budget mass =
        Budget.of(
            "mass",
            "mg",
            List.of(
                Quantity.of("concentration", "mg/L", 20, 0.4),
                Quantity.of("volume", "L", 0.05, 0.0005)),
            x -> x[0] * x[1]);

    assertThat(mass.value()).isEqualTo(1);
    assertThat(mass.standardUncertainty()).isCloseTo(Math.hypot(0.02, 0.01), within(1e-9));
    assertThat(mass.contributions())
        .extracting(Contribution::sharePercent)
        .satisfies(
            shares -> {
              assertThat(shares.get(0)).isCloseTo(80, within(1e-6));
              assertThat(shares.get(1)).isCloseTo(20, within(1e-6));
            });
    assertThat(mass.expandedUncertainty(2)).isEqualTo(2 * mass.standardUncertainty());
  }

  /** Of 200 000 trials the standard deviation is known to 0.16 %. */
  @Test
  void thePropagationOfDistributionsAgreesWhereTheModelIsNearlyLinear() {
    List<Source> sources =
        List.of(
            Quantity.of("potential", "mV", 180, 0.1),
            Joint.of(
                "offset and slope",
                List.of(20.0, -58.0),
                List.of(List.of(0.25, 0.07), List.of(0.07, 0.02))));
    MeasurementModel model = x -> Math.pow(10, (x[0] - x[1]) / x[2]);

    Budget budget = Budget.of("c", "mol/L", sources, model);
    MonteCarlo drawn = MonteCarlo.of(sources, model, 200_000, 20260101);

    assertThat(budget.standardUncertainty() / drawn.standardDeviation()).isCloseTo(1, within(0.01));
    assertThat(budget.value() + budget.expandedUncertainty(2))
        .isCloseTo(drawn.high(), within(0.05 * budget.expandedUncertainty(2)));
  }

  @Test
  void aQuantityWithinBoundsHasTheUncertaintyOfARectangle() {
    assertThat(Quantity.within("tolerance", "mL", 25, 0.03).standardUncertainty())
        .isCloseTo(0.01732, within(5e-6));
  }

  @Test
  void withoutAnyUncertaintyNothingHasAShare() {
    Budget exact = Budget.of("y", "1", List.of(Quantity.exactly("x", "1", 3)), x -> x[0] * x[0]);

    assertThat(exact.standardUncertainty()).isZero();
    assertThat(exact.contributions().get(0).sharePercent()).isZero();
    assertThat(exact.contributions().get(0).sensitivities().get(0)).isCloseTo(6, within(1e-6));
    assertThat(exact.effectiveDegreesOfFreedom()).isInfinite();
  }

  /** pH 9 less an exact 0: a step of 10⁻⁶ mol/L leads where the logarithm is not defined. */
  @Test
  void nextToTheEndOfAModelTheStepIsMadeSmaller() {
    List<Quantity> sources =
        List.of(Quantity.of("a", "mol/L", 1e-9, 1e-11), Quantity.exactly("b", "mol/L", 0));

    Budget ph = Budget.of("pH", "[pH]", sources, x -> -Math.log10(x[0] - x[1]));

    assertThat(ph.value()).isCloseTo(9, within(1e-12));
    assertThat(ph.standardUncertainty()).isCloseTo(0.01 / Math.log(10), within(1e-8));
    assertThat(ph.contributions().get(1).standardUncertainty()).isZero();
    assertThat(ph.contributions().get(1).sensitivities().get(0))
        .isCloseTo(1e9 / Math.log(10), within(1e3));
  }

  @Test
  void aModelWithoutAFiniteResultIsRefused() {
    List<Quantity> nothing = List.of(Quantity.of("x", "1", 0, 0.1));

    assertThatThrownBy(() -> Budget.of("y", "1", nothing, x -> 1 / x[0]))
        .isInstanceOf(ArithmeticException.class)
        .hasMessage("no finite y follows from these inputs");
  }

  @Test
  void aCovarianceMatrixThatIsNotSymmetricIsRefused() {
    assertThatThrownBy(
            () -> Joint.of("a", List.of(1.0, 2.0), List.of(List.of(1.0, 0.5), List.of(0.4, 1.0))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("covariances are finite and symmetric");
  }

  @Test
  void theTableShowsEachSourceWithItsShare() {
    Budget budget =
        Budget.of(
            "nitrate",
            "mg/L",
            List.of(
                Quantity.of("dilution", "1", 2, 0.02),
                Joint.of("line", List.of(10.0), List.of(List.of(0.01)))),
            x -> x[0] * x[1]);

    assertThat(BudgetTable.of(budget).text())
        .isEqualTo(
            """
            source         x      u(x)  unit       c     u(y)   share
            dilution  2.0000  0.020000  1     10.000  0.20000  50.0 %
            line                                      0.20000  50.0 %
            nitrate = 20.000, u = 0.28284 mg/L (k = 1)
            """);
  }
}
