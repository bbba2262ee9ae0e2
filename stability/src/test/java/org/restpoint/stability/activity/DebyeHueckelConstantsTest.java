package org.restpoint.stability.activity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;
import org.restpoint.stability.electrode.Nernst;

class DebyeHueckelConstantsTest {

  private static final double METRES_PER_PICOMETRE = 1e-12;
  private static final double ELEMENTARY_CHARGE = 1.602176634e-19;
  private static final double BOLTZMANN = 1.380649e-23;
  private static final double AVOGADRO = 6.02214076e23;
  private static final double VACUUM_PERMITTIVITY = 8.8541878128e-12;

  @Test
  void atTheTemperaturesOfTheTableTheyAreTheTables() {
    Published table = Published.table("debye-hueckel-constants");
    double[] celsius = table.numbers("celsius");
    double[] a = table.numbers("a");
    double[] b = table.numbers("b");
    assertThat(celsius).hasSize(11);
    for (int i = 0; i < celsius.length; i++) {
      DebyeHueckelConstants constants = DebyeHueckelConstants.at(celsius[i]);
      // Rounding of the interpolation.
      assertThat(constants.a()).isCloseTo(a[i], within(1e-12));
      assertThat(constants.perPicometre()).isCloseTo(b[i] / 100, within(1e-14));
      assertThat(constants.beyondTable()).isFalse();
    }
  }

  /** A and B from first principles: P. Debye, E. Hückel 1923, in SI units. */
  @Test
  void theyAgreeWithTheTheoryAndThePermittivityOfWater() {
    Published table = Published.table("water-permittivity");
    double[] celsius = table.numbers("celsius");
    double[] permittivity = table.numbers("permittivity");
    double[] density = table.numbers("density");
    for (int i = 0; i < celsius.length; i++) {
      double energy = BOLTZMANN * Nernst.kelvin(celsius[i]);
      double screening = VACUUM_PERMITTIVITY * permittivity[i] * energy;
      double squareOfCharge = ELEMENTARY_CHARGE * ELEMENTARY_CHARGE;
      double a =
          Math.sqrt(2 * Math.PI * AVOGADRO * density[i])
              * Math.pow(squareOfCharge / (4 * Math.PI * screening), 1.5)
              / Math.log(10);
      double perMetre = Math.sqrt(2 * AVOGADRO * density[i] * squareOfCharge / screening);
      DebyeHueckelConstants constants = DebyeHueckelConstants.at(celsius[i]);
      // The table rests on an older permittivity, 78.54 at 25 °C where this one is 78.30: 0.3 % of
      // it are 0.5 % of A and 0.15 % of B; at 0 °C they lie half as far again apart.
      assertThat(constants.a()).as("A at %s °C", celsius[i]).isCloseTo(a, withinPercentage(0.8));
      assertThat(constants.perPicometre())
          .as("B at %s °C", celsius[i])
          .isCloseTo(perMetre * METRES_PER_PICOMETRE, withinPercentage(0.3));
    }
  }

  @Test
  void betweenTheTemperaturesOfTheTableTheyLieOnALine() {
    DebyeHueckelConstants constants = DebyeHueckelConstants.at(22.5);
    assertThat(constants.a()).isCloseTo((0.5042 + 0.5085) / 2, within(1e-12));
    assertThat(constants.perPicometre()).isCloseTo((0.3273 + 0.3281) / 200, within(1e-14));
  }

  @Test
  void outsideTheTableItsLastLineIsProlongedAndSaysSo() {
    DebyeHueckelConstants hot = DebyeHueckelConstants.at(70);
    assertThat(hot.a()).isCloseTo(0.5425 + (0.5425 - 0.5319), within(1e-12));
    assertThat(hot.beyondTable()).isTrue();
    DebyeHueckelConstants cold = DebyeHueckelConstants.at(-5);
    assertThat(cold.a()).isCloseTo(0.4883 - (0.4921 - 0.4883), within(1e-12));
    assertThat(cold.beyondTable()).isTrue();
  }

  @Test
  void whatAreNotConstantsAreRefused() {
    assertThatThrownBy(() -> new DebyeHueckelConstants(0, 0.003, false))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("A is above 0 and B is 0 or above, not 0.0 and 0.003");
    assertThatThrownBy(() -> new DebyeHueckelConstants(0.5, -1, false))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("A is above 0 and B is 0 or above, not 0.5 and -1.0");
  }

  @Test
  void whereThereIsNoWaterThereIsNoAnswer() {
    for (double celsius : new double[] {-10.1, 100.1, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> DebyeHueckelConstants.at(celsius))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage(
              "activity coefficients are for water of -10 to 100 °C, not " + celsius + " °C");
    }
  }
}
