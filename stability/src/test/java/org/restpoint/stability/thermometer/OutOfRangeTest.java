package org.restpoint.stability.thermometer;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.calibration.Reason;

/** Whatever a meter shows that is no temperature has a name. */
class OutOfRangeTest {

  private static final List<ResistanceThermometer> ALL =
      List.of(
          new Platinum(100),
          new Platinum(1000),
          new SteinhartHart(1.129148e-3, 2.34125e-4, 8.76741e-8),
          new Beta(10000, 25, 3950));

  private static void eachSays(double ohms, String code) {
    for (ResistanceThermometer thermometer : ALL) {
      Reason reason = Readings.refused(thermometer, ohms);
      assertThat(reason.code()).as("%s at %s ohm", thermometer, ohms).isEqualTo(code);
      assertThat(reason.text()).isNotBlank();
      assertThat(reason.remedy()).endsWith(".");
    }
  }

  @Test
  void zeroOhmIsShorted() {
    eachSays(0, "thermometer-shorted");
    eachSays(-0.0, "thermometer-shorted");
    eachSays(1.5, "thermometer-shorted");
  }

  @Test
  void noEndOfOhmsIsOpen() {
    eachSays(Double.POSITIVE_INFINITY, "thermometer-open");
    eachSays(Double.MAX_VALUE, "thermometer-open");
    eachSays(20e6, "thermometer-open");
  }

  @Test
  void lessThanZeroIsNoResistance() {
    eachSays(-0.001, "thermometer-negative");
    eachSays(Double.NEGATIVE_INFINITY, "thermometer-negative");
  }

  @Test
  void notANumberIsUnreadable() {
    eachSays(Double.NaN, "thermometer-unreadable");
  }

  @Test
  void thePersonIsToldWhatWasSeenAndExpected() {
    Reason shorted = Readings.refused(new Platinum(100), 0.6);
    assertThat(shorted.text())
        .isEqualTo(
            "the thermometer reads 0.600000 ohm, expected 18.5201 to 390.481 ohm (-200 to 850 °C):"
                + " it is shorted");
    assertThat(Readings.refused(new Platinum(100), Double.POSITIVE_INFINITY).text())
        .isEqualTo(
            "the thermometer reads no finite resistance, expected 18.5201 to 390.481 ohm (-200 to"
                + " 850 °C): it is open");
  }

  @Test
  void theWrongKindOfPlatinumIsNeitherShortedNorOpenInWater() {
    for (double celsius : new double[] {0, 20, 40}) {
      double pt100 = new Platinum(100).ohms(celsius);
      double pt1000 = new Platinum(1000).ohms(celsius);
      assertThat(Readings.refused(new Platinum(1000), pt100).code())
          .isEqualTo("thermometer-out-of-range");
      Reason reason = Readings.refused(new Platinum(100), pt1000);
      assertThat(reason.code()).isEqualTo("thermometer-out-of-range");
      assertThat(reason.remedy()).contains("this kind of thermometer");
    }
  }
}
