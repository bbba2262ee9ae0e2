package org.restpoint.stability.addition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.restpoint.stability.addition.KnownAdditionTest.answer;
import static org.restpoint.stability.addition.KnownAdditionTest.refusal;
import static org.restpoint.stability.addition.KnownAdditionTest.step;

import org.junit.jupiter.api.Test;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.preparation.Volume;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Contribution;
import org.restpoint.stability.uncertainty.MonteCarlo;
import org.restpoint.stability.uncertainty.Source.Quantity;

class SubtractionAndAnalyteAdditionTest {

  private static final double SLOPE = -28.5;

  /** Sulfide, of which one silver ion takes half. Invented figures. */
  private static final KnownSubtraction SULFIDE =
      new KnownSubtraction(
          Vessel.of(new Volume("sample", 50, 0.05), new Volume("adjustor", 50, 0.1)),
          new Volume("silver nitrate", 1, 0.005),
          Quantity.of("silver nitrate", "mmol/L", 100, 0.5),
          0.5);

  private static final AnalyteAddition CHLORIDE =
      new AnalyteAddition(
          Vessel.of(new Volume("standard", 100, 0.1), new Volume("adjustor", 2, 0.02)),
          Quantity.of("standard", "mg/L", 20, 0.1),
          new Volume("sample", 5, 0.02));

  private static PotentialStep sulfide(double left) {
    double before = SLOPE * Math.log10(1.5 * 50 / 100);
    double after = SLOPE * Math.log10(left * 1.5 * 50 / 101);
    return PotentialStep.of(before, 0.1, after, 0.1, SLOPE, 0.3);
  }

  private static PotentialStep chloride(double sample) {
    double before = SLOPE * Math.log10(20 * 100 / 102.0);
    double after = SLOPE * Math.log10((20 * 100 + sample * 5) / 107.0);
    return PotentialStep.of(before, 0.1, after, 0.1, SLOPE, 0.3);
  }

  /** 1 mL of 100 mmol/L takes 0.05 mmol of the 0.075 that 50 mL of 1.5 mmol/L hold. */
  @Test
  void theConcentrationOfWhatIsTakenAwayIsFound() {
    assertThat(answer(SULFIDE.of(sulfide(1 / 3.0))).concentration().value())
        .isCloseTo(1.5, within(1e-10));
    assertThat(answer(SULFIDE.of(sulfide(1 / 3.0))).remarks()).isEmpty();
  }

  @Test
  void tooLittleAndTooMuchReagentAreAnsweredAndNamed() {
    assertThat(answer(SULFIDE.of(sulfide(0.51))).remarks())
        .extracting(Reason::code)
        .containsExactly("subtraction-small");
    assertThat(answer(SULFIDE.of(sulfide(0.09))).remarks())
        .extracting(Reason::code)
        .containsExactly("subtraction-near-end");
  }

  @Test
  void aReagentThatTakesNothingGivesNoAnswer() {
    assertThat(refusal(SULFIDE.of(sulfide(1)))).isEqualTo("subtraction-no-change");
    assertThat(refusal(SULFIDE.of(sulfide(1.5)))).isEqualTo("subtraction-wrong-way");
    assertThat(refusal(SULFIDE.of(step(20, 0.1, -SLOPE)))).isEqualTo("subtraction-wrong-way");
  }

  /** Of 200 000 trials the standard deviation is known to 0.16 %. */
  @Test
  void thePropagationOfDistributionsAgreesForSubtraction() {
    Budget budget = answer(SULFIDE.of(sulfide(1 / 3.0))).concentration();
    MonteCarlo drawn =
        MonteCarlo.of(
            budget.contributions().stream().map(Contribution::source).toList(),
            x -> {
              double before = x[0] + x[1];
              double left = Math.pow(10, (x[5] - x[4]) / x[6]) * (before + x[2]) / before;
              return 0.5 * x[3] * x[2] / x[0] / (1 - left);
            },
            200_000,
            20260606);

    assertThat(budget.standardUncertainty() / drawn.standardDeviation()).isCloseTo(1, within(0.01));
  }

  @Test
  void aSampleAddedToAStandardIsFoundWhetherStrongerOrWeaker() {
    for (double sample : new double[] {400, 40, 20, 10}) {
      assertThat(answer(CHLORIDE.of(chloride(sample))).concentration().value())
          .isCloseTo(sample, within(1e-9));
    }
  }

  @Test
  void aSampleOfNothingIsToldAsItIsAndNamed() {
    assertThat(answer(CHLORIDE.of(chloride(0))).remarks())
        .extracting(Reason::code)
        .containsExactly("near-zero");
    assertThat(answer(CHLORIDE.of(chloride(0))).concentration().value()).isCloseTo(0, within(1e-9));
    assertThat(answer(CHLORIDE.of(chloride(100))).remarks()).isEmpty();
  }

  @Test
  void aPotentialThatFallsFurtherThanWaterTakesItGivesNoAnswer() {
    assertThat(refusal(CHLORIDE.of(step(20, 0.1, SLOPE)))).isEqualTo("below-zero");
  }

  /** Of 200 000 trials the standard deviation is known to 0.16 %. */
  @Test
  void thePropagationOfDistributionsAgreesForAnalyteAddition() {
    Budget budget = answer(CHLORIDE.of(chloride(400))).concentration();
    MonteCarlo drawn =
        MonteCarlo.of(
            budget.contributions().stream().map(Contribution::source).toList(),
            x -> {
              double before = x[0] + x[1];
              double more = Math.pow(10, (x[5] - x[4]) / x[6]) * (before + x[3]) / before;
              return x[2] * x[0] / x[3] * (more - 1);
            },
            200_000,
            20260607);

    assertThat(budget.value()).isCloseTo(400, withinPercentage(1e-9));
    assertThat(budget.standardUncertainty() / drawn.standardDeviation()).isCloseTo(1, within(0.01));
  }

  @Test
  void reagentsAndStandardsOfNothingAreRefused() {
    Vessel vessel = Vessel.of(new Volume("sample", 50, 0));
    Volume volume = new Volume("reagent", 1, 0);
    Quantity nothing = Quantity.exactly("nothing", "mmol/L", 0);
    Quantity something = Quantity.exactly("something", "mmol/L", 1);

    assertThatThrownBy(() -> new KnownSubtraction(vessel, volume, nothing, 1))
        .hasMessageStartingWith("a reagent holds");
    assertThatThrownBy(() -> new KnownSubtraction(vessel, volume, something, 0))
        .hasMessage("a reagent takes a number of ions above zero, not 0.0");
    assertThatThrownBy(() -> new AnalyteAddition(vessel, nothing, volume))
        .hasMessage("a standard holds something of the ion");
  }
}
