package org.restpoint.stability.activity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;
import org.restpoint.stability.chemistry.Analyte;

class IonTest {

  @Test
  void theSizesAreThoseOfThePublishedTable() {
    Published table = Published.table("ion-sizes");
    double[] charges = table.numbers("charge");
    double[] lowest = table.numbers("lowest");
    double[] highest = table.numbers("highest");
    assertThat(table.rows()).hasSize(27);
    for (int i = 0; i < charges.length; i++) {
      String name = table.texts("ion").get(i);
      Ion ion = Ion.named(name).orElseThrow();
      assertThat(ion.charge()).as(name).isEqualTo((int) charges[i]);
      // The middle of a printed range.
      assertThat(ion.sizePicometres())
          .as(name)
          .isCloseTo(100 * (lowest[i] + highest[i]) / 2, within(1e-9));
    }
  }

  @Test
  void everyKnownAnalyteIsAnIonOfItsCharge() {
    for (Analyte analyte : Analyte.known()) {
      assertThat(Ion.of(analyte))
          .hasValueSatisfying(
              ion -> {
                assertThat(ion.name()).isEqualTo(analyte.name());
                assertThat(ion.charge()).isEqualTo(analyte.charge());
              });
    }
  }

  @Test
  void noTwoIonsShareAName() {
    assertThat(Ion.known()).extracting(Ion::name).doesNotHaveDuplicates();
  }

  @Test
  void anAnalyteThatIsNotInTheTableHasNoIon() {
    assertThat(Ion.of(new Analyte("molybdate", "MoO4 2-", -2, 159.9, 0))).isEmpty();
    // Known by name, but not at this charge.
    assertThat(Ion.of(new Analyte("calcium", "Ca+", 1, 40.078, 0))).isEmpty();
  }

  @Test
  void anIonWithoutNameChargeOrSizeIsRefused() {
    assertThatThrownBy(() -> new Ion(" ", 1, 300)).hasMessage("an ion has a name");
    for (int charge : new int[] {0, 5, -5}) {
      assertThatThrownBy(() -> new Ion("x", charge, 300))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("the charge of x is -4 to 4 and not 0, not " + charge);
    }
    for (double size : new double[] {0, -1, 2001, Double.NaN}) {
      assertThatThrownBy(() -> new Ion("x", 1, size))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("the size of x is above 0 and up to 2000 pm, not " + size);
    }
  }
}
