package org.restpoint.stability.thermometer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

class ToleranceTest {

  @Test
  void theStandardsTableIsMetInKelvinAndInOhm() {
    Published table = Published.table("pt100-tolerance");
    double[] celsius = table.numbers("celsius");
    double[] kelvin = table.numbers("kelvin");
    double[] ohms = table.numbers("ohms");
    Platinum pt100 = new Platinum(100);
    assertThat(ohms).hasSize(19);
    for (int i = 0; i < ohms.length; i++) {
      Tolerance tolerance = Tolerance.valueOf(table.texts("class").get(i));
      double bound = tolerance.boundKelvin(celsius[i]);
      assertThat(bound).as("%s at %s °C", tolerance, celsius[i]).isCloseTo(kelvin[i], within(1e-9));
      double kelvinPerOhm = Readings.read(pt100, pt100.ohms(celsius[i])).kelvinPerOhm();
      // Half of the last printed decimal.
      assertThat(bound / kelvinPerOhm)
          .as("%s at %s °C, ohm", tolerance, celsius[i])
          .isCloseTo(ohms[i], within(0.005));
    }
  }

  @Test
  void theErrorIsRectangularWithinTheBound() {
    // 0.3 + 0.005 · 25 = 0.425 K and 0.15 + 0.002 · 25 = 0.2 K, by the root of 3.
    assertThat(Tolerance.B.standardUncertaintyKelvin(25)).isCloseTo(0.245374, within(5e-7));
    assertThat(Tolerance.A.standardUncertaintyKelvin(-25)).isCloseTo(0.115470, within(5e-7));
  }

  @Test
  void nobodyVouchesOutsideTheEquationsRange() {
    for (double celsius : new double[] {-201, 851, Double.NaN}) {
      assertThatThrownBy(() -> Tolerance.A.standardUncertaintyKelvin(celsius))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("works from -200.0 to 850.0 °C");
    }
  }
}
