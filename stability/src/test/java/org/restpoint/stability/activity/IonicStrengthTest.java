package org.restpoint.stability.activity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.activity.IonicStrength.Dissolved;

class IonicStrengthTest {

  /** Rounding of a few additions. */
  private static final double ROUNDING = 1e-15;

  @Test
  void aSaltOfSingleChargesHasItsConcentration() {
    assertThat(IonicStrength.ofSalt(1, 0.01).molesPerLitre()).isCloseTo(0.01, within(ROUNDING));
    assertThat(IonicStrength.ofSalt(-1, 0.01).molesPerLitre()).isCloseTo(0.01, within(ROUNDING));
  }

  @Test
  void aSaltOfADoubleChargeHasThreeTimesItsConcentration() {
    assertThat(IonicStrength.ofSalt(2, 0.01).molesPerLitre()).isCloseTo(0.03, within(ROUNDING));
    assertThat(IonicStrength.ofSalt(-2, 0.01).molesPerLitre()).isCloseTo(0.03, within(ROUNDING));
  }

  @Test
  void everyIonCountsWithTheSquareOfItsCharge() {
    // Magnesium sulfate, 0.01 mol/L, is 4 times as strong as a salt of single charges; and
    // potassium chloride comes on top.
    IonicStrength strength =
        IonicStrength.of(
            List.of(
                new Dissolved(2, 0.01),
                new Dissolved(-2, 0.01),
                new Dissolved(1, 0.1),
                new Dissolved(-1, 0.1)));
    assertThat(strength.molesPerLitre()).isCloseTo(0.14, within(ROUNDING));
  }

  @Test
  void waterWithoutIonsHasNone() {
    assertThat(IonicStrength.of(List.of()).molesPerLitre()).isZero();
    assertThat(IonicStrength.ofSalt(1, 0).molesPerLitre()).isZero();
  }

  @Test
  void whatIsNotAConcentrationOrAChargeIsRefused() {
    for (double moles : new double[] {-1e-9, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> new Dissolved(1, moles))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("a concentration is 0 mol/L or above, not " + moles);
    }
    assertThatThrownBy(() -> IonicStrength.ofSalt(0, 0.1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("an ion has a charge");
    assertThatThrownBy(() -> IonicStrength.ofSalt(1, 100))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("an ionic strength is 0 to 50.0 mol/L, not 100.0 mol/L");
  }
}
