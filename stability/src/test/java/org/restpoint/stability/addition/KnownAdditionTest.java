package org.restpoint.stability.addition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;
import org.restpoint.stability.addition.AdditionOutcome.Answer;
import org.restpoint.stability.addition.AdditionOutcome.NoAnswer;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.preparation.Dilution;
import org.restpoint.stability.preparation.DilutionStep;
import org.restpoint.stability.preparation.Volume;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Contribution;
import org.restpoint.stability.uncertainty.MonteCarlo;
import org.restpoint.stability.uncertainty.Source.Quantity;

class KnownAdditionTest {

  private static final double SLOPE = -57.5;
  private static final KnownAddition NITRATE =
      new KnownAddition(
          Vessel.of(new Volume("sample", 100, 0.1), new Volume("adjustor", 2, 0.02)),
          new Volume("standard", 2, 0.01),
          Quantity.of("standard", "mg/L", 1000, 5));

  static Answer answer(AdditionOutcome outcome) {
    assertThat(outcome).isInstanceOf(Answer.class);
    return (Answer) outcome;
  }

  static String refusal(AdditionOutcome outcome) {
    assertThat(outcome).isInstanceOf(NoAnswer.class);
    return ((NoAnswer) outcome).reason().code();
  }

  static PotentialStep step(double change, double each, double slope) {
    return PotentialStep.of(180, each, 180 + change, each, slope, 0.5);
  }

  private static KnownAddition exactly(double sample, double standard, double concentration) {
    return new KnownAddition(
        Vessel.of(new Volume("sample", sample, 0)),
        new Volume("standard", standard, 0),
        Quantity.exactly("standard", "mol/L", concentration));
  }

  /** Half of the last digit printed. */
  @Test
  void calciumInSeaWaterIsThatOfTheTextbook() {
    Published table = Published.table("calcium-known-addition");
    Budget diluted =
        answer(
                exactly(
                        table.numbers("sampleMillilitres")[0],
                        table.numbers("standardMillilitres")[0],
                        table.numbers("standardMolesPerLitre")[0])
                    .of(
                        PotentialStep.of(
                            1000 * table.numbers("voltsBefore")[0],
                            0,
                            1000 * table.numbers("voltsAfter")[0],
                            0,
                            1000 * table.numbers("voltsPerDecade")[0],
                            0)))
            .concentration();
    Budget sea =
        Dilution.of(new DilutionStep(new Volume("pipette", 10, 0), new Volume("flask", 100, 0)))
            .before(Quantity.exactly("diluted", "mol/L", diluted.value()));

    assertThat(diluted.value())
        .isCloseTo(table.numbers("dilutedMolesPerLitre")[0], within(0.005e-4));
    assertThat(sea.value()).isCloseTo(9.88e-3, within(0.005e-3));
  }

  /** Half of the table's last digit. */
  @Test
  void aTenthOfTheVolumeAddedGivesTheTabulatedQ() {
    Published table = Published.table("known-addition-q");
    for (int i = 0; i < table.rows().size(); i++) {
      double change = -table.numbers("millivolts")[i];
      assertThat(
              answer(exactly(100, 10, 1).of(PotentialStep.of(50, 0, 50 + change, 0, -59, 0)))
                  .concentration()
                  .value())
          .isCloseTo(table.numbers("q")[i], within(0.00005));
    }
  }

  @Test
  void theConcentrationThatMadeThePotentialsIsFoundAlsoWithAdjustor() {
    double amount = 8.5 * 100;
    double before = SLOPE * Math.log10(amount / 102);
    double after = SLOPE * Math.log10((amount + 1000 * 2) / 104);

    Answer found = answer(NITRATE.of(PotentialStep.of(before, 0.1, after, 0.1, SLOPE, 0.5)));

    assertThat(found.concentration().value()).isCloseTo(8.5, within(1e-10));
    assertThat(found.concentration().unit()).isEqualTo("mg/L");
    assertThat(found.remarks()).isEmpty();
  }

  /** Of 200 000 trials the standard deviation is known to 0.16 %; second order adds 0.3 %. */
  @Test
  void thePropagationOfDistributionsAgrees() {
    Budget budget = answer(NITRATE.of(step(-30, 0.15, SLOPE))).concentration();
    MonteCarlo drawn =
        MonteCarlo.of(
            budget.contributions().stream().map(Contribution::source).toList(),
            x -> {
              double before = x[0] + x[1];
              double after = before + x[2];
              double ratio = Math.pow(10, (x[5] - x[4]) / x[6]);
              return x[3] * x[2] / after / (ratio - before / after) * before / x[0];
            },
            200_000,
            20260605);

    assertThat(budget.standardUncertainty() / drawn.standardDeviation()).isCloseTo(1, within(0.01));
    assertThat(budget.value()).isCloseTo(drawn.mean(), withinPercentage(0.1));
  }

  @Test
  void aPotentialThatDidNotMoveGivesNoAnswer() {
    assertThat(refusal(NITRATE.of(step(0, 0, SLOPE)))).isEqualTo("addition-no-change");
    assertThat(refusal(NITRATE.of(step(-0.28, 0.1, SLOPE)))).isEqualTo("addition-no-change");
    answer(NITRATE.of(step(-0.29, 0.1, SLOPE)));
  }

  @Test
  void aPotentialThatWentTheWrongWayGivesNoAnswer() {
    NoAnswer wrong = (NoAnswer) NITRATE.of(step(12, 0.1, SLOPE));

    assertThat(wrong.reason().code()).isEqualTo("addition-wrong-way");
    assertThat(wrong.reason().text())
        .isEqualTo(
            "the potential changed by 12.00 mV (U = 0.28 mV, k = 2) at a slope of -57.50"
                + " mV/decade: as if the concentration had fallen");
    assertThat(refusal(NITRATE.of(step(-12, 0.1, -SLOPE)))).isEqualTo("addition-wrong-way");
  }

  @Test
  void anAdditionThatDoesNotDoubleTheConcentrationIsAnsweredAndNamed() {
    double doubling = SLOPE * Math.log10(2);

    assertThat(answer(NITRATE.of(step(doubling + 0.1, 0.1, SLOPE))).remarks())
        .extracting(Reason::code)
        .containsExactly("addition-small");
    assertThat(answer(NITRATE.of(step(doubling - 0.1, 0.1, SLOPE))).remarks()).isEmpty();
  }

  @Test
  void anEqualErrorOfBothPotentialsIsNoneAtAll() {
    Budget budget = answer(NITRATE.of(step(-30, 0.15, SLOPE))).concentration();
    double sum =
        Stream.of(4, 5)
            .mapToDouble(i -> budget.contributions().get(i).sensitivities().get(0))
            .sum();

    assertThat(sum).isCloseTo(0, within(1e-7));
  }

  @Test
  void aSlopeOfZeroAndAStandardOfNothingAreRefused() {
    assertThatThrownBy(() -> step(-30, 0.1, 0)).hasMessage("a slope is a number other than 0");
    assertThatThrownBy(() -> exactly(100, 1, 0))
        .hasMessage("a standard holds something of the ion");
  }
}
