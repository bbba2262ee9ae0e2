package org.restpoint.stability.addition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.restpoint.stability.addition.KnownAdditionTest.answer;
import static org.restpoint.stability.addition.KnownAdditionTest.refusal;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;
import org.restpoint.stability.addition.AdditionOutcome.Answer;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.preparation.Volume;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Source.Quantity;

class GranPlotTest {

  private static final double SLOPE = -57.5;
  private static final Quantity EXACT_SLOPE = Quantity.exactly("slope", "mV", SLOPE);

  /** Readings that a concentration gives: 50 mL of sample, 1 mL of adjustor, 500 mg/L. */
  static List<GranPoint> nitrate(double concentration, double slope, double u) {
    List<GranPoint> points = new ArrayList<>();
    for (double added = 0; added <= 2.5; added += 0.5) {
      double inside = (concentration * 50 + 500 * added) / (51 + added);
      points.add(new GranPoint(added, added > 0 ? 0.003 : 0, 200 + slope * Math.log10(inside), u));
    }
    return points;
  }

  static GranPlot plot(List<GranPoint> points) {
    return new GranPlot(
        Vessel.of(new Volume("sample", 50, 0.05), new Volume("adjustor", 1, 0.01)),
        Quantity.of("standard", "mg/L", 500, 2),
        0.003,
        points);
  }

  /** c of a line by ordinary least squares on rows times √w, the weights of 0.1 mV. */
  private static OLSMultipleLinearRegression oracle(
      double vessel, double slope, List<GranPoint> points) {
    double[] y = new double[points.size()];
    double[][] x = new double[points.size()][];
    for (int i = 0; i < y.length; i++) {
      GranPoint point = points.get(i);
      double amount =
          (vessel + point.addedMillilitres())
              * Math.pow(10, (point.millivolts() - points.get(0).millivolts()) / slope);
      double weight =
          Math.abs(slope) / (amount * Math.log(10) * point.standardUncertaintyMillivolts());
      y[i] = weight * amount;
      x[i] = new double[] {weight, weight * point.addedMillilitres()};
    }
    OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
    regression.setNoIntercept(true);
    regression.newSampleData(y, x);
    return regression;
  }

  /** The worked figures, to their last digit. */
  @Test
  void aPlotThatMeetsZeroWhereThePublishedOnesDoGivesTheirConcentrations() {
    Published table = Published.table("gran-intercepts");
    for (int i = 0; i < table.rows().size(); i++) {
      double slope = table.numbers("millivoltsPerDecade")[i];
      double sample = table.numbers("sampleMillilitres")[i];
      List<GranPoint> points = new ArrayList<>();
      for (double added = 0; added <= 40; added += 10) {
        double amount = added - table.numbers("interceptMillilitres")[i];
        double millivolts = 100 + slope * Math.log10(amount / (sample + added));
        points.add(new GranPoint(added, 0, millivolts, 0.1));
      }
      GranPlot plot =
          new GranPlot(
              Vessel.of(new Volume("sample", sample, 0)),
              Quantity.exactly("standard", "mol/L", table.numbers("standardMolesPerLitre")[i]),
              0,
              points);

      assertThat(answer(plot.of(Quantity.exactly("slope", "mV", slope))).concentration().value())
          .isCloseTo(table.numbers("molesPerLitre")[i], withinPercentage(0.002));
    }
  }

  @Test
  void theConcentrationThatMadeThePotentialsIsFoundAlsoWithAdjustor() {
    Answer found = answer(plot(nitrate(9.3, SLOPE, 0.1)).of(EXACT_SLOPE));

    assertThat(found.concentration().value()).isCloseTo(9.3, within(1e-10));
    assertThat(found.remarks()).isEmpty();
  }

  @Test
  void realAdditionsOfFluorideFollowHipparchusWeightedLineAndTheirScatterIsNamed() {
    Published table = Published.table("fluoride-additions");
    List<GranPoint> points = new ArrayList<>();
    for (int i = 0; i < table.rows().size(); i++) {
      points.add(
          new GranPoint(
              table.numbers("addedMillilitres")[i], 0, table.numbers("millivolts")[i], 0.1));
    }
    OLSMultipleLinearRegression oracle = oracle(50, -59.16, points);
    double[] line = oracle.estimateRegressionParameters();
    double[][] unit = oracle.estimateRegressionParametersVariance();
    Answer found =
        answer(
            new GranPlot(
                    Vessel.of(new Volume("sample", 50, 0)),
                    Quantity.exactly("standard", "mL", 50),
                    0,
                    points)
                .of(Quantity.exactly("slope", "mV", -59.16)));
    double reach = line[0] / line[1];
    double relative =
        Math.sqrt(
            oracle.calculateResidualSumOfSquares()
                / 5
                * (unit[0][0] / (line[0] * line[0])
                    + unit[1][1] / (line[1] * line[1])
                    - 2 * unit[0][1] / (line[0] * line[1])));

    assertThat(found.concentration().value()).isCloseTo(reach, withinPercentage(1e-9));
    // The weights follow the readings, which the textbook's covariance leaves out: residuals of
    // 1.3 % change it by a few percent.
    assertThat(found.concentration().standardUncertainty())
        .isCloseTo(reach * relative, withinPercentage(5));
    assertThat(found.remarks()).extracting(Reason::code).containsExactly("gran-misfit");
  }

  /** Potentials alone: the covariance of the weighted line, carried to a/b. */
  @Test
  void thePotentialsPartIsThatOfTheFitsCovariance() {
    List<GranPoint> points = nitrate(9.3, SLOPE, 0.2);
    OLSMultipleLinearRegression oracle = oracle(51, SLOPE, points);
    double[] line = oracle.estimateRegressionParameters();
    double[][] unit = oracle.estimateRegressionParametersVariance();
    double relative =
        Math.sqrt(
            unit[0][0] / (line[0] * line[0])
                + unit[1][1] / (line[1] * line[1])
                - 2 * unit[0][1] / (line[0] * line[1]));
    Budget budget = answer(plot(points).of(EXACT_SLOPE)).concentration();

    assertThat(budget.contributions().get(4).source().name()).isEqualTo("potentials");
    assertThat(budget.contributions().get(4).standardUncertainty())
        .isCloseTo(9.3 * relative, withinPercentage(0.01));
  }

  @Test
  void aBlankIsTakenOffWithItsUncertainty() {
    GranPlot plot = plot(nitrate(9.3, SLOPE, 0.1));
    Budget without = answer(plot.of(EXACT_SLOPE)).concentration();
    Budget with =
        answer(plot.of(EXACT_SLOPE, Quantity.of("blank", "mg/L", 0.3, 0.1))).concentration();

    assertThat(with.value()).isCloseTo(9, within(1e-9));
    assertThat(with.standardUncertainty())
        .isCloseTo(Math.hypot(without.standardUncertainty(), 0.1), withinPercentage(0.001));
    assertThatThrownBy(() -> plot.of(EXACT_SLOPE, Quantity.exactly("blank", "mmol/L", 0)))
        .hasMessage("a blank is given in mg/L, not in mmol/L");
  }

  @Test
  void aSampleOfNothingIsToldAsItIsAndNamed() {
    List<GranPoint> added = nitrate(1e-12, SLOPE, 0.1).subList(1, 6);
    Answer found = answer(plot(added).of(EXACT_SLOPE));

    assertThat(found.concentration().value()).isCloseTo(0, within(1e-9));
    assertThat(found.remarks()).extracting(Reason::code).containsExactly("near-zero");
  }

  @Test
  void pointsThatMakeNoPlotGiveNoAnswer() {
    List<GranPoint> points = nitrate(9.3, SLOPE, 0.1);

    assertThat(refusal(plot(points.subList(0, 2)).of(EXACT_SLOPE))).isEqualTo("gran-too-few");
    assertThat(refusal(plot(List.of(points.get(0), points.get(1), points.get(1))).of(EXACT_SLOPE)))
        .isEqualTo("gran-too-few");
    assertThat(refusal(plot(points).of(Quantity.exactly("slope", "mV", -SLOPE))))
        .isEqualTo("gran-wrong-way");
    assertThat(refusal(plot(nitrate(9.3, SLOPE, 100)).of(EXACT_SLOPE))).isEqualTo("gran-no-change");
    assertThat(refusal(plot(nitrate(9.3, SLOPE, 0.1)).of(Quantity.exactly("slope", "V", 1e-3))))
        .isEqualTo("gran-apart");
  }

  @Test
  void aPlotThatMeetsZeroOnTheWrongSideGivesNoAnswer() {
    List<GranPoint> points = new ArrayList<>();
    for (double added = 1; added <= 3; added += 0.5) {
      double millivolts = SLOPE * Math.log10((added - 0.5) / (51 + added));
      points.add(new GranPoint(added, 0, millivolts, 0.1));
    }

    assertThat(refusal(plot(points).of(EXACT_SLOPE))).isEqualTo("below-zero");
  }

  @Test
  void additionsThatTogetherDoNotDoubleTheConcentrationAreNamed() {
    assertThat(answer(plot(nitrate(60, SLOPE, 0.1)).of(EXACT_SLOPE)).remarks())
        .extracting(Reason::code)
        .containsExactly("addition-small");
  }

  @Test
  void aSlopeThatIsNotTheElectrodesBendsThePlotAndIsNamed() {
    Answer bent =
        answer(plot(nitrate(9.3, SLOPE, 0.02)).of(Quantity.exactly("slope", "mV", SLOPE + 6)));

    assertThat(bent.remarks()).extracting(Reason::code).containsExactly("gran-misfit");
  }

  @Test
  void numbersOutOfRangeAreRefused() {
    assertThatThrownBy(() -> new GranPoint(-1, 0, 0, 0.1))
        .hasMessage("an added volume and its uncertainty are 0 or above");
    assertThatThrownBy(() -> new GranPoint(1, 0, 0, 0))
        .hasMessage("a potential is a number with an uncertainty above zero, which weighs it");
    assertThatThrownBy(() -> plot(nitrate(9, SLOPE, 0.1)).of(Quantity.exactly("slope", "mV", 0)))
        .hasMessage("a slope is a number other than 0");
  }
}
