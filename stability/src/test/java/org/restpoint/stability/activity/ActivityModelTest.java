package org.restpoint.stability.activity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class ActivityModelTest {

  private static final List<ActivityModel> MODELS =
      List.of(new ExtendedDebyeHueckel(), new Davies());
  private static final Ion NITRATE = Ion.named("nitrate").orElseThrow();
  private static final Ion CALCIUM = Ion.named("calcium").orElseThrow();

  @Test
  void withoutIonsEveryIonActsAsItsConcentrationForCertain() {
    for (ActivityModel model : MODELS) {
      ActivityCoefficient coefficient = model.coefficient(CALCIUM, 0, 0.5, 25);
      assertThat(coefficient.value()).isEqualTo(1);
      assertThat(coefficient.relativeStandardUncertainty()).isZero();
      assertThat(coefficient.beyondValidity()).isFalse();
    }
  }

  @Test
  void theLimitItselfIsStillValidAndPastItTheDoubtIsNoLessThanTenPercent() {
    for (ActivityModel model : MODELS) {
      double limit = model.validToMolesPerLitre();
      assertThat(model.coefficient(NITRATE, limit, 25).beyondValidity()).isFalse();
      ActivityCoefficient past = model.coefficient(NITRATE, Math.nextUp(limit), 25);
      assertThat(past.beyondValidity()).isTrue();
      assertThat(past.relativeStandardUncertainty()).isGreaterThanOrEqualTo(0.1);
    }
  }

  @Test
  void outsideTheTableOfTemperaturesItIsBeyondValidityAtAnyStrength() {
    for (ActivityModel model : MODELS) {
      assertThat(model.coefficient(NITRATE, 0.001, 60).beyondValidity()).isFalse();
      ActivityCoefficient hot = model.coefficient(NITRATE, 0.001, 61);
      assertThat(hot.beyondValidity()).isTrue();
      assertThat(hot.relativeStandardUncertainty()).isEqualTo(0.1);
    }
  }

  @Test
  void theDoubtOfTheModelIsWhatItsFormulaSays() {
    for (ActivityModel model : MODELS) {
      ActivityCoefficient coefficient = model.coefficient(CALCIUM, 0.02, 25);
      double logarithm = Math.log(coefficient.value());
      assertThat(coefficient.relativeStandardUncertainty())
          .isCloseTo(Math.sqrt(0.0025 * logarithm * logarithm + 0.1225 * 0.0004), within(1e-12));
    }
  }

  @Test
  void theDoubtOfTheIonicStrengthComesOnTop() {
    for (ActivityModel model : MODELS) {
      double exact = model.coefficient(CALCIUM, 0.05, 25).relativeStandardUncertainty();
      double doubted = model.coefficient(CALCIUM, 0.05, 0.2, 25).relativeStandardUncertainty();
      // γ at I·(1 ± 0.001), scaled to the 20 %; the curvature of ln γ is left out.
      double higher = model.coefficient(CALCIUM, 0.05 * 1.001, 25).value();
      double lower = model.coefficient(CALCIUM, 0.05 * 0.999, 25).value();
      double ofStrength = 0.2 * Math.log(higher / lower) / 0.002;
      assertThat(doubted).isCloseTo(Math.hypot(exact, ofStrength), within(1e-6));
      assertThat(doubted).isGreaterThan(1.2 * exact);
    }
  }

  @Test
  void anActivityIsTheCoefficientTimesTheConcentration() {
    // Kielland's 0.755 for chloride at I = 0.1 makes 0.0755 of 0.100 mol/L.
    ActivityCoefficient chloride =
        new ExtendedDebyeHueckel().coefficient(Ion.named("chloride").orElseThrow(), 0.1, 25);
    // The printed coefficient, 0.755, is rounded to 0.005.
    assertThat(chloride.activityOf(0.1)).isCloseTo(0.0755, within(0.0003));
    assertThat(chloride.concentrationOf(chloride.activityOf(0.1))).isCloseTo(0.1, within(1e-15));
  }

  @Test
  void whatIsNotAStrengthOrADoubtOfItIsRefused() {
    for (ActivityModel model : MODELS) {
      for (double strength : new double[] {-1e-9, 50.1, Double.NaN}) {
        assertThatThrownBy(() -> model.coefficient(NITRATE, strength, 25))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessage("an ionic strength is 0 to 50.0 mol/L, not " + strength + " mol/L");
      }
      for (double doubt : new double[] {-0.1, Double.NaN, Double.POSITIVE_INFINITY}) {
        assertThatThrownBy(() -> model.coefficient(NITRATE, 0.1, doubt, 25))
            .isInstanceOf(IllegalArgumentException.class)
            .hasMessage(
                "the relative uncertainty of an ionic strength is 0 or above, not " + doubt);
      }
    }
  }

  @Test
  void daviesCoefficientIsLowestNearFourTenthsAndPassesOneNearTwo() {
    ActivityModel davies = new Davies();
    double lowest = davies.coefficient(NITRATE, 0.4, 25).value();
    assertThat(davies.coefficient(NITRATE, 0.3, 25).value()).isGreaterThan(lowest);
    assertThat(davies.coefficient(NITRATE, 0.5, 25).value()).isGreaterThan(lowest);
    assertThat(davies.coefficient(NITRATE, 1.9, 25).value()).isLessThan(1);
    assertThat(davies.coefficient(NITRATE, 2, 25).value()).isGreaterThan(1);
  }

  @Test
  void theStrongestSolutionStillHasAFiniteCoefficient() {
    for (ActivityModel model : MODELS) {
      for (int charge : new int[] {-4, -1, 1, 4}) {
        assertThat(model.coefficient(new Ion("x", charge, 300), 50, 100).value())
            .isPositive()
            .isFinite();
      }
    }
  }

  @Test
  void whatIsNotACoefficientIsRefused() {
    for (double value : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> new ActivityCoefficient(value, 0, false))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("an activity coefficient is above 0, not " + value);
    }
    assertThatThrownBy(() -> new ActivityCoefficient(1, -1, false))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a relative uncertainty is 0 or above, not -1.0");
  }
}
