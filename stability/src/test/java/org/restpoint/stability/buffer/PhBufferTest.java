package org.restpoint.stability.buffer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;
import org.restpoint.stability.buffer.TemperatureTable.Point;

class PhBufferTest {

  private static final List<String> NAMES = List.of("phthalate", "phosphate", "borax", "carbonate");

  private static PhBuffer buffer(String name) {
    return PhBuffer.named(name).orElseThrow();
  }

  private static double ph(String name, double celsius) {
    return buffer(name).ph(celsius).orElseThrow();
  }

  @Test
  void fourPrimaryStandardsAreKnownByName() {
    assertThat(PhBuffer.known()).extracting(PhBuffer::name).containsExactlyElementsOf(NAMES);
    for (String ofAShop : List.of("4", "7.00", "pH 10", "Borax", "")) {
      assertThat(PhBuffer.named(ofAShop)).as(ofAShop).isEmpty();
    }
  }

  @Test
  void eachHasThePublishedPhAtEveryPublishedTemperature() {
    Published table = Published.table("ph-buffers");
    double[] celsius = table.numbers("celsius");
    assertThat(celsius).hasSize(11);
    for (String name : NAMES) {
      assertThat(buffer(name).table().points()).hasSameSizeAs(table.rows());
      for (int i = 0; i < celsius.length; i++) {
        assertThat(buffer(name).ph(celsius[i])).hasValue(table.numbers(name)[i]);
      }
    }
  }

  @Test
  void beyondZeroAndFiftyDegreesThereIsNoPh() {
    for (String name : NAMES) {
      assertThat(buffer(name).ph(-0.001)).isEmpty();
      assertThat(buffer(name).ph(50.001)).isEmpty();
      assertThat(buffer(name).ph(Double.NaN)).isEmpty();
    }
  }

  @Test
  void betweenTheRowsItMeetsTheValuesPublishedThere() {
    Published table = Published.table("ph-buffers-between");
    double[] celsius = table.numbers("celsius");
    assertThat(celsius).hasSize(11);
    for (String name : NAMES) {
      for (int i = 0; i < celsius.length; i++) {
        // The line is off by 0.0008 at most, the printed decimals by 0.0005.
        assertThat(ph(name, celsius[i]))
            .as("%s at %s °C", name, celsius[i])
            .isCloseTo(table.numbers(name)[i], within(0.0013));
      }
    }
  }

  @Test
  void aTableOfEverySecondRowMeetsTheRowsLeftOutWithinThreeThousandths() {
    double worst = 0;
    for (PhBuffer buffer : PhBuffer.known()) {
      List<Point> rows = buffer.table().points();
      List<Point> kept = new ArrayList<>();
      for (int i = 0; i < rows.size(); i += 2) {
        kept.add(rows.get(i));
      }
      TemperatureTable coarse = new TemperatureTable(kept);
      for (Point row : rows) {
        double error = coarse.at(row.celsius()).orElseThrow() - row.value();
        worst = Math.max(worst, Math.abs(error));
      }
    }
    // A hair for decimals in binary. A quarter of it is what the whole table is off.
    assertThat(worst).isBetween(0.002, 0.003 + 1e-9);
  }

  @Test
  void theEquationsOfTwoOtherDeterminationsOfPhthalateLieCloseBy() {
    for (double celsius = 0; celsius <= 50; celsius += 2.5) {
      double t = celsius + 273.15;
      // H. B. Hetzer et al., J. Res. Natl. Bur. Stand. 81A (1977) 21, doi 10.6028/jres.081A.005
      // (abstract seen): 4.006 at 25 °C.
      double hetzer = 2073.44 / t - 13.3270 + 0.045199 * t - 3.4846e-5 * t * t;
      // W. J. Hamer et al., J. Res. Natl. Bur. Stand. 36 (1946) 47 (abstract seen).
      double hamer = 4.000 + 0.0000479 * (celsius - 15) * (celsius - 15);
      // Different samples and activity conventions: up to 0.011 at the ends.
      assertThat(ph("phthalate", celsius)).isCloseTo(hetzer, within(0.012));
      assertThat(ph("phthalate", celsius)).isCloseTo(hamer, within(0.012));
    }
  }

  @Test
  void theFiguresOfTheFirstPublicationsAtTwentyFiveDegreesAreMet() {
    // Abstracts seen: Hamer 1946; Staples and Bates, J. Res. Natl. Bur. Stand. 73A (1969) 37, which
    // also names 9.180 as the scale's upper limit so far, that of borax.
    assertThat(ph("phthalate", 25)).isEqualTo(4.005);
    assertThat(ph("borax", 25)).isEqualTo(9.180);
    assertThat(ph("carbonate", 25)).isEqualTo(10.012);
  }

  @Test
  void anotherStandardsOfficeHasTheSameValuesToTheHundredth() {
    Published table = Published.table("ph-buffers-jis");
    double[] celsius = table.numbers("celsius");
    int compared = 0;
    for (String name : NAMES) {
      for (int i = 0; i < celsius.length; i++) {
        String published = table.texts(name).get(i);
        if (!published.equals("-")) {
          compared++;
          // Half a hundredth of rounding, and 0.008 between two determinations of phthalate.
          assertThat(ph(name, celsius[i]))
              .as("%s at %s °C", name, celsius[i])
              .isCloseTo(Double.parseDouble(published), within(0.013));
        }
      }
    }
    assertThat(compared).isEqualTo(41);
  }

  @Test
  void theRecipesWeighWhatTheirAmountsOfSubstanceDo() {
    Published weights = Published.table("atomic-weights");
    Map<String, Double> gramsPerMole = new HashMap<>();
    for (int i = 0; i < weights.rows().size(); i++) {
      gramsPerMole.put(weights.texts("symbol").get(i), weights.numbers("gramsPerMole")[i]);
    }
    // From the same source as that table, from memory.
    gramsPerMole.putAll(Map.of("B", 10.81, "C", 12.011, "P", 30.974));
    Published salts = Published.table("ph-buffer-salts");
    assertThat(salts.rows()).hasSize(6);
    for (int i = 0; i < salts.rows().size(); i++) {
      double molar = 0;
      for (String symbol : List.of("K", "Na", "H", "C", "B", "P", "O")) {
        molar += salts.numbers(symbol)[i] * gramsPerMole.getOrDefault(symbol, Double.NaN);
      }
      double grams = molar * salts.numbers("molPerKilogramOfWater")[i];
      String recipe = buffer(salts.texts("buffer").get(i)).recipe();
      assertThat(recipe)
          .contains(String.format(Locale.ROOT, "%.2f g of ", grams))
          .contains(salts.texts("formula").get(i));
      // A litre of these solutions holds 0.99 to 1.00 kg of water; 0.1 % of buoyancy, 0.005 g.
      assertThat(salts.numbers("gramsPerLitre")[i] / grams).isBetween(0.988, 1.002);
    }
  }

  @Test
  void itsUncertaintyIsAboveWhatTheTableAddsToIt() {
    // A line off by 0.0008 and decimals by 0.0005, both rectangular, under a third of it.
    double ofTheTable = Math.hypot(0.0008, 0.0005) / Math.sqrt(3);
    assertThat(ofTheTable).isLessThan(PhBuffer.STANDARD_UNCERTAINTY / 3);
    assertThat(PhBuffer.STANDARD_UNCERTAINTY).isLessThan(PhBuffer.STANDARD_UNCERTAINTY_OF_ACTIVITY);
  }
}
