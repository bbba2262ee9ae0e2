package org.restpoint.stability.preparation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.preparation.WaterPortion.Added;
import org.restpoint.stability.preparation.WaterPortion.AsRead;
import org.restpoint.stability.preparation.WaterPortion.MadeUp;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Contribution;
import org.restpoint.stability.uncertainty.MonteCarlo;
import org.restpoint.stability.uncertainty.Source.Quantity;

class AdjustmentTest {

  private static final Quantity READ = Quantity.of("read", "mg/L", 10, 0.2);

  private static Volume millilitres(double volume) {
    return new Volume(volume + " mL", volume, 0.001 * volume);
  }

  private static Added adjusted(double sample, double adjustor) {
    return Added.adjusted(millilitres(sample), millilitres(adjustor));
  }

  @Test
  void theSameRatioInSampleAndStandardsCorrectsNothing() {
    Adjustment adjustment = new Adjustment(adjusted(50, 1), adjusted(100, 2));

    assertThat(adjustment.factor().value()).isCloseTo(1, within(1e-15));
    assertThat(adjustment.concentration(READ).value()).isCloseTo(10, within(1e-13));
    assertThat(adjustment.remark()).isEmpty();
    assertThat(adjustment.comparable()).isTrue();
  }

  @Test
  void anotherRatioIsCorrectedAndNamedWithItsFigures() {
    Adjustment adjustment = new Adjustment(adjusted(100, 5), adjusted(100, 2));

    assertThat(adjustment.factor().value()).isCloseTo(1.05 / 1.02, within(1e-12));
    assertThat(adjustment.remark())
        .hasValueSatisfying(
            remark -> {
              assertThat(remark.code()).isEqualTo("adjustor-mismatch");
              assertThat(remark.text())
                  .isEqualTo(
                      "adjustor is 4.76 % of the sample's volume and 1.96 % of the standards';"
                          + " the volumes are corrected by 1.0294");
            });
    assertThat(adjustment.comparable()).isTrue();
  }

  @Test
  void aSampleWithoutAdjustorIsCorrectedForVolumeButNotComparable() {
    Adjustment adjustment = new Adjustment(Added.plain(millilitres(100)), adjusted(100, 2));

    assertThat(adjustment.factor().value()).isCloseTo(1 / 1.02, within(1e-12));
    assertThat(adjustment.comparable()).isFalse();
    assertThat(adjustment.remark())
        .hasValueSatisfying(
            remark -> {
              assertThat(remark.code()).isEqualTo("adjustor-missing");
              assertThat(remark.text()).contains("0.00 % of the sample's volume", "1.96 %");
              assertThat(remark.remedy()).startsWith("Read the sample again");
            });
  }

  @Test
  void standardsWithoutAdjustorAreNamedTheOtherWayRound() {
    Adjustment adjustment = new Adjustment(adjusted(100, 2), Added.plain(millilitres(100)));

    assertThat(adjustment.factor().value()).isCloseTo(1.02, within(1e-12));
    assertThat(adjustment.remark().orElseThrow().remedy()).startsWith("Read the standards again");
  }

  @Test
  void noAdjustorOnEitherSideIsNoMismatch() {
    Adjustment adjustment =
        new Adjustment(
            new Added(millilitres(90), Optional.empty(), List.of(millilitres(10))),
            Added.plain(millilitres(50)));

    assertThat(adjustment.remark()).isEmpty();
    assertThat(adjustment.factor().value()).isCloseTo(1 / 0.9, within(1e-12));
  }

  @Test
  void aSampleMadeUpAgainstStandardsLabelledAsReadIsOnlyDiluted() {
    Adjustment adjustment =
        new Adjustment(
            new MadeUp(millilitres(25), Optional.of(millilitres(2)), millilitres(100)),
            new AsRead(millilitres(50), Optional.of(millilitres(1))));

    assertThat(adjustment.factor().value()).isCloseTo(4, within(1e-12));
    assertThat(adjustment.remark()).isEmpty();
    assertThat(adjustment.factor().contributions()).hasSize(2);
  }

  @Test
  void aHundredthOfTheAdjustorMoreOrLessIsTheSame() {
    assertThat(new Adjustment(adjusted(100, 2.00), adjusted(100, 2.01)).remark()).isEmpty();
    assertThat(new Adjustment(adjusted(100, 2.00), adjusted(100, 2.05)).remark()).isPresent();
  }

  /** Of 100 000 trials the standard deviation is known to 0.22 %. */
  @Test
  void thePropagationOfDistributionsAgrees() {
    Budget budget =
        new Adjustment(
                new Added(
                    millilitres(50),
                    Optional.of(new Volume("adjustor", 1, 0.1)),
                    List.of(new Volume("spike", 5, 0.3))),
                adjusted(100, 2))
            .concentration(READ);
    MonteCarlo drawn =
        MonteCarlo.of(
            budget.contributions().stream().map(Contribution::source).toList(),
            x -> x[0] * ((x[1] + x[2] + x[3]) / x[1]) / ((x[4] + x[5]) / x[4]),
            100_000,
            20260602);

    assertThat(budget.value()).isCloseTo(drawn.mean(), withinPercentage(0.02));
    assertThat(budget.standardUncertainty() / drawn.standardDeviation()).isCloseTo(1, within(0.01));
  }

  @Test
  void aFlaskTooSmallForItsContentIsRefused() {
    assertThatThrownBy(
            () -> new MadeUp(millilitres(99), Optional.of(millilitres(2)), millilitres(100)))
        .hasMessage("101.0 mL do not go into a flask of 100.0 mL");
    assertThatThrownBy(() -> new AsRead(millilitres(1), Optional.of(millilitres(2))))
        .hasMessage("there is less adjustor than solution");
  }
}
