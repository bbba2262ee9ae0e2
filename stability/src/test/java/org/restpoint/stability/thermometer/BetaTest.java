package org.restpoint.stability.thermometer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;
import org.restpoint.stability.electrode.Nernst;

class BetaTest {

  private static final Beta COMMON = new Beta(10000, 25, 3950);

  @Test
  void resistancesAreTurnedIntoTheTemperaturesComputedElsewhere() {
    Published table = Published.table("thermistor-conversions");
    double[] ohms = table.numbers("ohms");
    double[] celsius = table.numbers("beta");
    assertThat(ohms).hasSize(3);
    for (int i = 0; i < ohms.length; i++) {
      // Half of the last printed decimal.
      assertThat(Readings.read(COMMON, ohms[i]).value()).isCloseTo(celsius[i], within(0.000005));
    }
  }

  @Test
  void betaBetweenTwoRowsOfATableMeetsBothAndIsTenthsOfAKelvinOffBeyond() {
    // Published 9814 ohm at 25 and 3542 ohm at 50 °C; 32128 ohm at 0 °C.
    double beta = Math.log(9814 / 3542.0) / (1 / Nernst.kelvin(25) - 1 / Nernst.kelvin(50));
    Beta part = new Beta(9814, 25, beta);
    assertThat(Readings.read(part, 9814).value()).isCloseTo(25, within(1e-12));
    assertThat(Readings.read(part, 3542).value()).isCloseTo(50, within(1e-9));
    assertThat(Readings.read(part, 32128).value()).isBetween(0.2, 1.0);
  }

  @Test
  void theRangeEndsAtFiftyBelowAndAHundredAndFiftyAbove() {
    assertThat(Readings.read(COMMON, COMMON.ohms(-50)).value()).isCloseTo(-50, within(1e-9));
    assertThat(Readings.read(COMMON, COMMON.ohms(150)).value()).isCloseTo(150, within(1e-9));
    assertThat(Readings.refused(COMMON, COMMON.ohms(-50) * 1.001).code())
        .isEqualTo("thermometer-out-of-range");
    assertThatThrownBy(() -> COMMON.ohms(150.1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("this thermometer works from -50.0 to 150.0 °C, not at 150.1 °C");
  }

  @Test
  void figuresThatAreNoThermistorsAreRefused() {
    assertThatThrownBy(() -> new Beta(0, 25, 3950))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the resistance at the reference is above zero, not 0.0");
    assertThatThrownBy(() -> new Beta(10000, 25, -3950))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("beta is above zero, in K, not -3950.0");
    assertThatThrownBy(() -> new Beta(10000, -300, 3950))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("absolute zero");
    assertThatThrownBy(() -> new Beta(10000, 25, 1e9))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("in ohm and kelvin");
  }
}
