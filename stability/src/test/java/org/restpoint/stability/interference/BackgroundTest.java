package org.restpoint.stability.interference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.electrode.Nernst;

class BackgroundTest {

  @Test
  void everyIonMakesUpItsPart() {
    Interferent chloride = new Interferent("chloride", -1, 0.005, 1e-2, 0.03, 0.04);
    Interferent nitrite = new Interferent("nitrite", -1, 0.06, 1e-3, 0, 0.5);
    Background background = Background.of(-1, List.of(chloride, nitrite));
    assertThat(background.molesPerLitre()).isCloseTo(5e-5 + 6e-5, within(1e-18));
    // 5 % of 5e-5 and 50 % of 6e-5.
    assertThat(background.standardUncertainty()).isCloseTo(Math.hypot(2.5e-6, 3e-5), within(1e-18));
    assertThat(background.parts())
        .extracting(part -> part.interferent().name())
        .containsExactly("chloride", "nitrite");
    assertThat(background.parts().get(0).molesPerLitre()).isCloseTo(5e-5, within(1e-18));
    assertThat(background.parts().get(0).standardUncertainty()).isCloseTo(2.5e-6, within(1e-18));
    assertThat(background.parts().get(1).standardUncertainty()).isCloseTo(3e-5, within(1e-18));
  }

  @Test
  void anIonOfHalfTheChargeCountsWithTheSquareOfItsActivity() {
    // Sodium beside calcium: 0.01·0.1² = 1e-4; 3 % of its activity are 6 % of its part.
    Background background =
        Background.of(2, List.of(new Interferent("sodium", 1, 0.01, 0.1, 0.03, 0)));
    assertThat(background.molesPerLitre()).isCloseTo(1e-4, within(1e-18));
    assertThat(background.standardUncertainty()).isCloseTo(6e-6, within(1e-18));
  }

  @Test
  void anIonOfTwiceTheChargeCountsWithTheRootOfItsActivity() {
    // Calcium beside sodium: 1e-3·√1e-4 = 1e-5; 4 % of its activity are 2 % of its part.
    Background background =
        Background.of(1, List.of(new Interferent("calcium", 2, 1e-3, 1e-4, 0.04, 0)));
    assertThat(background.molesPerLitre()).isCloseTo(1e-5, within(1e-18));
    assertThat(background.standardUncertainty()).isCloseTo(2e-7, within(1e-18));
  }

  @Test
  void noIonsAndIonsThatAreNotThereMakeUpNothing() {
    assertThat(Background.of(-1, List.of())).isEqualTo(new Background(0, 0, List.of()));
    Background absent =
        Background.of(-1, List.of(new Interferent("chloride", -1, 0.005, 0, 0.1, 0.1)));
    assertThat(absent.molesPerLitre()).isZero();
    assertThat(absent.standardUncertainty()).isZero();
  }

  /** IUPAC 1976 and Wang, Analytical Electrochemistry, 2nd edition, equation 5-8 (p. 145). */
  @Test
  void theDetectionLimitIsWhereThePotentialIsEighteenMillivoltsOffTheLine() {
    for (int charge : new int[] {-2, -1, 1, 2}) {
      Background background =
          Background.of(
              charge, List.of(Interferent.exactly("other", Integer.signum(charge), 0.01, 0.1)));
      double limit = background.detectionLimitMolesPerLitre();
      assertThat(limit).isCloseTo(0.01 * Math.pow(0.1, Math.abs(charge)), withinPercentage(1e-10));
      double shift =
          new Interference(background)
              .shiftMillivolts(limit, Nernst.idealSlopeMillivoltsPerDecade(charge, 25));
      // 18 is printed to a whole millivolt, for a single charge.
      assertThat(shift * charge).isCloseTo(18, within(0.5));
    }
  }

  @Test
  void anIonOfTheOtherSignIsRefusedByName() {
    assertThatThrownBy(
            () -> Background.of(-1, List.of(Interferent.exactly("potassium", 1, 0.01, 0.1))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "potassium of charge 1 cannot stand in for an ion of charge -1: a selectivity"
                + " coefficient is for two ions of one sign, take it off the list");
  }

  @Test
  void whatIsNotAnInterferingIonIsRefused() {
    assertThatThrownBy(() -> Interferent.exactly("", -1, 0.1, 0.1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("an interfering ion has a name");
    assertThatThrownBy(() -> Interferent.exactly("x", 0, 0.1, 0.1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the charge of x is -4 to 4 and not 0, not 0");
    assertThatThrownBy(() -> Interferent.exactly("x", 1, 0, 0.1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the selectivity coefficient of x is above 0, not 0.0");
    assertThatThrownBy(() -> Interferent.exactly("x", 1, 0.1, -1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the activity of x is 0 or above, not -1.0");
    assertThatThrownBy(() -> new Interferent("x", 1, 0.1, 0.1, Double.NaN, 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the uncertainty of the activity of x is 0 or above, not NaN");
    assertThatThrownBy(() -> new Interferent("x", 1, 0.1, 0.1, 0, -1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the uncertainty of the selectivity coefficient of x is 0 or above, not -1.0");
    assertThatThrownBy(() -> Background.of(0, List.of()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the charge of the primary ion is -4 to 4 and not 0, not 0");
    assertThatThrownBy(() -> Background.of(4, List.of(Interferent.exactly("x", 1, 1e300, 1e300))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("interfering ions make up 0 mol/L or above, not Infinity");
  }
}
