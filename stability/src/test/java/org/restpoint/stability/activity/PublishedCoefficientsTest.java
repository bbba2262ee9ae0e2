package org.restpoint.stability.activity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

class PublishedCoefficientsTest {

  private static final ActivityModel DEBYE_HUECKEL = new ExtendedDebyeHueckel();
  private static final ActivityModel DAVIES = new Davies();

  @Test
  void kiellandsTableIsFoundAgain() {
    Published table = Published.table("kielland-activity-coefficients");
    double[] charges = table.numbers("charge");
    double[] sizes = table.numbers("size");
    assertThat(charges).hasSize(11);
    for (String strength : table.columns().subList(2, table.columns().size())) {
      double[] coefficients = table.numbers(strength);
      for (int i = 0; i < charges.length; i++) {
        Ion ion = new Ion("of the table", (int) charges[i], 100 * sizes[i]);
        // Printed to 0.005 where I is 0.025 and above, and worked out with constants of its time.
        assertThat(DEBYE_HUECKEL.coefficient(ion, Double.parseDouble(strength), 25).value())
            .as("z = %s, %s Å, I = %s", charges[i], sizes[i], strength)
            .isCloseTo(coefficients[i], within(0.007));
      }
    }
  }

  @Test
  void workedExamplesAreFoundAgain() {
    Published table = Published.table("activity-worked-examples");
    double[] a = table.numbers("a");
    double[] b = table.numbers("b");
    double[] charges = table.numbers("charge");
    double[] sizes = table.numbers("size");
    double[] strengths = table.numbers("ionicStrength");
    double[] linear = table.numbers("linear");
    double[] log10 = table.numbers("log10");
    double[] tolerance = table.numbers("tolerance");
    assertThat(a).hasSize(5);
    for (int i = 0; i < a.length; i++) {
      DebyeHueckelConstants constants = new DebyeHueckelConstants(a[i], b[i] / 100, false);
      Ion ion = new Ion(table.texts("what").get(i), (int) charges[i], 100 * sizes[i]);
      double found = DEBYE_HUECKEL.naturalLogarithm(ion, strengths[i], constants) / Math.log(10);
      assertThat(found + linear[i] * strengths[i])
          .as("%s at %s mol/L", ion.name(), strengths[i])
          .isCloseTo(log10[i], within(tolerance[i]));
    }
  }

  @Test
  void daviesEquationIsFoundAgain() {
    Published table = Published.table("davies");
    double[] charges = table.numbers("charge");
    double[] strengths = table.numbers("ionicStrength");
    double[] coefficients = table.numbers("coefficient");
    assertThat(charges).hasSize(8);
    DebyeHueckelConstants constants = new DebyeHueckelConstants(0.509, 0.00328, false);
    for (int i = 0; i < charges.length; i++) {
      Ion ion = new Ion("of the table", (int) charges[i], 300);
      // Half of the last printed decimal.
      assertThat(Math.exp(DAVIES.naturalLogarithm(ion, strengths[i], constants)))
          .as("z = %s, I = %s", charges[i], strengths[i])
          .isCloseTo(coefficients[i], within(0.00005));
    }
  }

  @Test
  void coefficientsOfAnotherModelLieWithinTheStatedUncertainty() {
    Published table = Published.table("truesdell-jones");
    double[] sizes = table.numbers("size");
    double[] b = table.numbers("b");
    double[] coefficients = table.numbers("coefficient");
    assertThat(sizes).hasSize(7);
    for (int i = 0; i < sizes.length; i++) {
      Ion ion = Ion.named(table.texts("ion").get(i)).orElseThrow();
      ActivityCoefficient ours = DEBYE_HUECKEL.coefficient(ion, 0.1, 25);
      if (b[i] == 0 && ion.sizePicometres() == 100 * sizes[i]) {
        // The same equation with the same size: half of the last decimal.
        assertThat(ours.value()).as(ion.name()).isCloseTo(coefficients[i], within(0.00005));
      }
      assertThat(Math.abs(Math.log(ours.value() / coefficients[i])))
          .as(ion.name())
          .isLessThan(ours.relativeStandardUncertainty());
    }
  }
}
