package org.restpoint.stability.electrode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

class NernstTest {

  @Test
  void theIdealSlopeIsTheOneOfTheExactConstants() {
    Published table = Published.table("nernst-slope");
    double[] celsius = table.numbers("celsius");
    double[] charges = table.numbers("charge");
    double[] slopes = table.numbers("millivoltsPerDecade");
    assertThat(slopes).hasSize(14);
    for (int i = 0; i < slopes.length; i++) {
      int charge = (int) charges[i];
      // Half of the last printed decimal.
      assertThat(Nernst.idealSlopeMillivoltsPerDecade(charge, celsius[i]))
          .as("z = %d at %s °C", charge, celsius[i])
          .isCloseTo(slopes[i], within(0.0005));
      assertThat(Nernst.idealSlopeMillivoltsPerDecade(-charge, celsius[i]))
          .as("z = -%d at %s °C", charge, celsius[i])
          .isCloseTo(-slopes[i], within(0.0005));
    }
  }

  @Test
  void theConstantsAreTheProductsTheSiDefines() {
    BigDecimal avogadro = new BigDecimal("6.02214076e23");
    assertThat(Nernst.GAS_CONSTANT)
        .isEqualTo(new BigDecimal("1.380649e-23").multiply(avogadro).doubleValue());
    assertThat(Nernst.FARADAY_CONSTANT)
        .isEqualTo(new BigDecimal("1.602176634e-19").multiply(avogadro).doubleValue());
  }

  @Test
  void thereIsNoSlopeAtAbsoluteZeroOrBelowOrWithoutANumber() {
    for (double celsius : new double[] {-273.15, -300, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> Nernst.idealSlopeMillivoltsPerDecade(1, celsius))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("a temperature is above absolute zero, not " + celsius + " °C");
    }
  }

  @Test
  void thereIsNoSlopeForAnIonWithoutACharge() {
    assertThatThrownBy(() -> Nernst.idealSlopeMillivoltsPerDecade(0, 25))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("an ion has a charge");
  }
}
