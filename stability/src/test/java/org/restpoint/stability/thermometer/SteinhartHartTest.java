package org.restpoint.stability.thermometer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

class SteinhartHartTest {

  /** Often given for 10 kΩ parts; right for the one of thermistor-a.csv. */
  private static final SteinhartHart COMMON =
      new SteinhartHart(1.129148e-3, 2.34125e-4, 8.76741e-8);

  private static ThermistorPoint point(Published table, double celsius) {
    int row = table.texts("celsius").indexOf(String.format(Locale.ROOT, "%.0f", celsius));
    return new ThermistorPoint(table.numbers("ohms")[row], celsius);
  }

  private static SteinhartHart through(Published table, double one, double two, double three) {
    return SteinhartHart.through(point(table, one), point(table, two), point(table, three));
  }

  @Test
  void aPublishedTableIsMetWithThePublishedCoefficients() {
    Published table = Published.table("thermistor-a");
    double[] celsius = table.numbers("celsius");
    double[] ohms = table.numbers("ohms");
    assertThat(ohms).hasSize(16);
    for (int i = 0; i < ohms.length; i++) {
      // The coefficients' last digit is worth up to 0.0004 K: 5e-10 of a in 1/T.
      assertThat(Readings.read(COMMON, ohms[i]).value()).isCloseTo(celsius[i], within(0.0005));
    }
  }

  @Test
  void threePointsOfThatTableGiveTheOthers() {
    Published table = Published.table("thermistor-a");
    SteinhartHart curve = through(table, -40, -19, 0);
    double[] celsius = table.numbers("celsius");
    double[] ohms = table.numbers("ohms");
    for (int i = 0; i < ohms.length; i++) {
      // 0.05 ohm of rounding is 0.00003 K at 1 °C.
      assertThat(Readings.read(curve, ohms[i]).value()).isCloseTo(celsius[i], within(0.00005));
    }
    assertThat(curve.a()).isCloseTo(COMMON.a(), within(1e-8));
    assertThat(curve.b()).isCloseTo(COMMON.b(), within(2e-9));
    assertThat(curve.c()).isCloseTo(COMMON.c(), within(5e-12));
  }

  @Test
  void threePointsOfAnotherTableGiveTheOthers() {
    Published table = Published.table("thermistor-b");
    SteinhartHart curve = through(table, 0, 25, 50);
    double[] celsius = table.numbers("celsius");
    double[] ohms = table.numbers("ohms");
    assertThat(ohms).hasSize(6);
    for (int i = 0; i < ohms.length; i++) {
      // Whole ohms: half of one is 0.0037 K at 50 °C and 0.0015 K at 30 °C.
      assertThat(Readings.read(curve, ohms[i]).value()).isCloseTo(celsius[i], within(0.003));
    }
  }

  @Test
  void theRowLeftOutOfThatTableIsNotOnItsCurve() {
    SteinhartHart curve = through(Published.table("thermistor-b"), 0, 25, 50);
    assertThat(Readings.read(curve, 5331).value()).isCloseTo(39.53, within(0.005));
    // 5231 ohm to the half ohm, with 0.003 K of the curve at 200 ohm/K.
    assertThat(curve.ohms(40)).isCloseTo(5231, within(1.1));
  }

  @Test
  void coefficientsOfAnotherPartReadTenthsOfAKelvinHighWithoutASign() {
    Published table = Published.table("thermistor-b");
    double[] celsius = table.numbers("celsius");
    double[] ohms = table.numbers("ohms");
    for (int i = 0; i < ohms.length; i++) {
      assertThat(Readings.read(COMMON, ohms[i]).value() - celsius[i]).isBetween(0.31, 0.45);
    }
  }

  @Test
  void resistancesAreTurnedIntoTheTemperaturesComputedElsewhere() {
    Published table = Published.table("thermistor-conversions");
    double[] ohms = table.numbers("ohms");
    double[] celsius = table.numbers("steinhartHart");
    for (int i = 0; i < ohms.length; i++) {
      // Half of the last printed decimal.
      assertThat(Readings.read(COMMON, ohms[i]).value()).isCloseTo(celsius[i], within(0.000005));
    }
  }

  @Test
  void aCubicTermThatIsLostInRoundingChangesNothing() {
    SteinhartHart without = new SteinhartHart(1.1e-3, 2.4e-4, 0);
    for (double c : new double[] {1e-25, -1e-25, 1e-20, -1e-20, Double.MIN_VALUE}) {
      SteinhartHart with = new SteinhartHart(1.1e-3, 2.4e-4, c);
      for (double celsius : new double[] {-50, 0, 25, 150}) {
        // 1e-20 · 14³ over 2.4e-4 is 1e-13 in ln R.
        assertThat(with.ohms(celsius) / without.ohms(celsius)).isCloseTo(1, within(5e-13));
      }
    }
  }

  @Test
  void aCubicTermBelowZeroIsTakenWhereTheCurveStillFalls() {
    SteinhartHart bent = new SteinhartHart(8e-4, 2.9e-4, -8e-8);
    for (double celsius : new double[] {-50, -10, 0, 25, 80, 150}) {
      double ohms = bent.ohms(celsius);
      assertThat(Readings.solved(bent, ohms, -50, 150)).isCloseTo(celsius, within(1e-9));
      assertThat(Readings.read(bent, ohms).value()).isCloseTo(celsius, within(1e-9));
    }
    assertThat(Readings.read(bent, bent.ohms(25)).kelvinPerOhm()).isNegative();
  }

  @Test
  void coefficientsThatAreNoThermistorsAreRefused() {
    double[][] wrong = {
      {Double.NaN, 2e-4, 9e-8},
      {1e-3, 0, 9e-8},
      {1e-3, -2e-4, 9e-8},
      {1e-3, Double.POSITIVE_INFINITY, 9e-8},
      {1e-3, 2e-4, Double.NEGATIVE_INFINITY}
    };
    for (double[] c : wrong) {
      assertThatThrownBy(() -> new SteinhartHart(c[0], c[1], c[2]))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageStartingWith("the coefficients of a thermistor are finite, and b above zero")
          .hasMessageContaining("order is a, b, c");
    }
    // Turns within the range, and has no finite resistance in it.
    for (double[] c : new double[][] {{1e-3, 2e-4, -1e-5}, {1e-3, 1e-9, 0}}) {
      assertThatThrownBy(() -> new SteinhartHart(c[0], c[1], c[2]))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("give no such resistance from -50.0 to 150.0 °C");
    }
  }

  @Test
  void threePointsThatAreNoThermistorsAreRefused() {
    ThermistorPoint ice = new ThermistorPoint(32650, 0);
    ThermistorPoint room = new ThermistorPoint(10000, 25);
    ThermistorPoint warm = new ThermistorPoint(3603, 50);
    assertThatThrownBy(() -> SteinhartHart.through(ice, room, room))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("three points have three resistances");
    assertThatThrownBy(
            () ->
                SteinhartHart.through(
                    new ThermistorPoint(32650, 50), room, new ThermistorPoint(3603, 0)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("falls as it gets warmer")
        .hasMessageContaining("whether temperatures were swapped");
    assertThatThrownBy(() -> new ThermistorPoint(0, 25))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a resistance is finite and above zero, not 0.0");
    assertThat(SteinhartHart.through(warm, ice, room).b()).isPositive();
  }
}
