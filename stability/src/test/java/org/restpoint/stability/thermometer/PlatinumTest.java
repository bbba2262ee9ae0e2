package org.restpoint.stability.thermometer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

class PlatinumTest {

  private static final Platinum PT100 = new Platinum(100);

  @Test
  void theStandardsTableIsMetFromTheColdestToTheHottest() {
    Published table = Published.table("pt100-table");
    double[] celsius = table.numbers("celsius");
    double[] ohms = table.numbers("ohms");
    assertThat(ohms).hasSize(82);
    for (int i = 0; i < ohms.length; i++) {
      // Half of the last printed decimal, and a hair for decimals in binary.
      assertThat(PT100.ohms(celsius[i]))
          .as("%s °C", celsius[i])
          .isCloseTo(ohms[i], within(0.005 + 1e-9));
    }
  }

  @Test
  void theStandardsTableIsMetBackwardsToo() {
    Published table = Published.table("pt100-table");
    double[] celsius = table.numbers("celsius");
    double[] ohms = table.numbers("ohms");
    // Not its first row: 18.52 ohm is rounded to below the range, which begins at 18.5201 ohm.
    assertThat(celsius[0]).isEqualTo(-200);
    for (int i = 1; i < ohms.length; i++) {
      // Half of the last printed decimal at 0.29 ohm/K or more.
      assertThat(Readings.read(PT100, ohms[i]).value())
          .as("%s ohm", ohms[i])
          .isCloseTo(celsius[i], within(0.005 / 0.29));
    }
  }

  @Test
  void theEquationIsMetToATenthOfAMilliohmAndTheInverseToHalfAMillikelvin() {
    Published table = Published.table("pt100-four-decimals");
    double[] celsius = table.numbers("celsius");
    double[] ohms = table.numbers("ohms");
    assertThat(ohms).hasSize(18);
    for (int i = 0; i < ohms.length; i++) {
      // Half of the last printed decimal, and that half at 0.29 ohm/K.
      assertThat(PT100.ohms(celsius[i])).isCloseTo(ohms[i], within(0.00005 + 1e-9));
      assertThat(Readings.read(PT100, ohms[i]).value())
          .isCloseTo(celsius[i], within(0.00005 / 0.29));
    }
  }

  @Test
  void aPublishedResistanceIsTurnedIntoItsPublishedTemperature() {
    // 108.5 ohm, 21.8189 °C on pages about the standard; half of the last decimal.
    assertThat(Readings.read(PT100, 108.5).value()).isCloseTo(21.8189, within(0.00005));
  }

  @Test
  void theMeanCoefficientFromIceToSteamIsTheStandards() {
    // IEC 60751, scope: alpha = (R100 - R0)/(R0 · 100 K) is conventionally 3.851e-3 /K.
    double alpha = (PT100.ohms(100) - PT100.ohms(0)) / (100 * PT100.ohms(0));
    assertThat(alpha).isCloseTo(3.851e-3, within(0.0005e-3));
  }

  @Test
  void tablesOfTheStandardsFirstEditionAreNotMet() {
    // 138.50 and 175.84 ohm are on paper to this day; the tolerance is the first test's.
    assertThat(Math.abs(PT100.ohms(100) - 138.50)).isGreaterThan(0.005);
    assertThat(Math.abs(PT100.ohms(200) - 175.84)).isGreaterThan(0.005);
  }

  @Test
  void atTheIcePointTheSlopeIsThatOfTheFirstCoefficient() {
    ThermometerReading.Celsius ice = Readings.read(PT100, 100);
    assertThat(ice.value()).isZero();
    assertThat(ice.kelvinPerOhm()).isCloseTo(1 / 0.39083, within(1e-12));
  }

  @Test
  void aPt1000HasTenTimesTheResistanceAndATenthOfTheSlope() {
    Platinum pt1000 = new Platinum(1000);
    for (double celsius : new double[] {-180, -3, 0, 25, 700}) {
      double ohms = PT100.ohms(celsius);
      assertThat(pt1000.ohms(celsius)).isCloseTo(10 * ohms, within(1e-9));
      assertThat(10 * Readings.read(pt1000, 10 * ohms).kelvinPerOhm())
          .isCloseTo(Readings.read(PT100, ohms).kelvinPerOhm(), within(1e-12));
    }
  }

  @Test
  void theEndsOfTheRangeAreInsideAndAnythingBeyondIsNot() {
    assertThat(Readings.read(PT100, PT100.ohms(-200)).value()).isCloseTo(-200, within(1e-9));
    assertThat(Readings.read(PT100, PT100.ohms(850)).value()).isCloseTo(850, within(1e-9));
    assertThat(Readings.refused(PT100, 18.52).code()).isEqualTo("thermometer-out-of-range");
    assertThat(Readings.refused(PT100, 390.49).code()).isEqualTo("thermometer-out-of-range");
    assertThat(Readings.refused(PT100, Math.nextDown(PT100.ohms(-200))).code())
        .isEqualTo("thermometer-out-of-range");
  }

  @Test
  void thereIsNoResistanceBeyondTheRange() {
    for (double celsius : new double[] {-200.001, 850.001, Double.NaN}) {
      assertThatThrownBy(() -> PT100.ohms(celsius))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("this thermometer works from -200.0 to 850.0 °C, not at " + celsius + " °C");
    }
  }

  @Test
  void aThermometerHasAResistanceAtZero() {
    for (double ohms : new double[] {0, -100, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> new Platinum(ohms))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("the resistance at 0 °C is above zero, 100 for a Pt100, not " + ohms);
    }
  }
}
