package org.restpoint.stability.preparation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;
import org.restpoint.stability.preparation.SoilPortion.Weighed;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Contribution;
import org.restpoint.stability.uncertainty.MonteCarlo;
import org.restpoint.stability.uncertainty.Source.Quantity;

class SoilProfileTest {

  private static final double CENTIMETRES_PER_INCH = 2.54;

  private static SoilLayer layer(
      String name, double milligramsPerKilogram, double centimetres, double density) {
    return new SoilLayer(
        name,
        Quantity.of("nitrate", "mg/kg", milligramsPerKilogram, 0.03 * milligramsPerKilogram),
        SoilBasis.OVEN_DRY,
        Quantity.of("thickness", "cm", centimetres, 0.5),
        Quantity.of("bulk density", "g/cm3", density, 0.05));
  }

  private static SoilProfile field(double milligramsPerKilogram, double inches, double density) {
    return new SoilProfile(
        List.of(layer("top", milligramsPerKilogram, inches * CENTIMETRES_PER_INCH, density)));
  }

  /** Pounds to the source's rounded factor, 0.006 %, and its last digit; kilograms to theirs. */
  @Test
  void anAreaHoldsWhatThePublishedFactorSays() {
    Published table = Published.table("soil-area");
    for (int i = 0; i < table.rows().size(); i++) {
      SoilProfile field =
          field(
              table.numbers("milligramsPerKilogram")[i],
              table.numbers("inches")[i],
              table.numbers("bulkDensity")[i]);
      assertThat(field.poundsPerAcre().value())
          .isCloseTo(table.numbers("poundsPerAcre")[i], within(0.0055));
      assertThat(field.kilogramsPerHectare().value())
          .isCloseTo(table.numbers("kilogramsPerHectare")[i], within(0.0005));
    }
  }

  /** They say "about": within a tenth, as 1.26 and 1.47 are of 1.36. */
  @Test
  void theAdvisersRulesOfThumbFollowForAMineralSoil() {
    Published table = Published.table("soil-area-rules");
    for (int i = 0; i < table.rows().size(); i++) {
      assertThat(
              field(table.numbers("milligramsPerKilogram")[i], table.numbers("inches")[i], 1.36)
                  .poundsPerAcre()
                  .value())
          .isCloseTo(table.numbers("poundsPerAcre")[i], withinPercentage(10));
    }
  }

  /** 1 lb/acre = 1.120851 kg/ha, as tables of units print it. */
  @Test
  void aPoundOnAnAcreIsTheTablesKilogramsOnAHectare() {
    assertThat(1 / SoilProfile.poundsPerAcre(1)).isCloseTo(1.120851, within(5e-7));
  }

  @Test
  void severalLayersAddUp() {
    SoilLayer top = layer("0-30 cm", 12, 30, 1.3);
    SoilLayer below = layer("30-60 cm", 6, 30, 1.5);
    Budget sum = new SoilProfile(List.of(top, below)).kilogramsPerHectare();
    Budget first = new SoilProfile(List.of(top)).kilogramsPerHectare();
    Budget second = new SoilProfile(List.of(below)).kilogramsPerHectare();

    assertThat(sum.value()).isCloseTo(46.8 + 27, within(1e-9));
    assertThat(sum.standardUncertainty())
        .isCloseTo(
            Math.hypot(first.standardUncertainty(), second.standardUncertainty()),
            withinPercentage(0.001));
    assertThat(sum.contributions().get(3).source().name()).isEqualTo("30-60 cm: nitrate");
  }

  /** Of 100 000 trials the standard deviation is known to 0.22 %. */
  @Test
  void thePropagationOfDistributionsAgrees() {
    Budget sum =
        new SoilProfile(List.of(layer("top", 12, 30, 1.3), layer("below", 6, 30, 1.5)))
            .kilogramsPerHectare();
    MonteCarlo drawn =
        MonteCarlo.of(
            sum.contributions().stream().map(Contribution::source).toList(),
            x -> 0.1 * (x[0] * x[1] * x[2] + x[3] * x[4] * x[5]),
            100_000,
            20260604);

    assertThat(sum.standardUncertainty() / drawn.standardDeviation()).isCloseTo(1, within(0.01));
  }

  @Test
  void aLayerOfSoilThatIsNotDryIsNamed() {
    SoilResult asReceived =
        new SoilExtract(
                new Weighed(Quantity.of("soil", "g", 20, 0.02), SoilBasis.AS_RECEIVED),
                new Volume("extractant", 40, 0.1),
                Optional.empty())
            .of(Quantity.of("read", "mg/L", 10, 0.1));
    SoilProfile profile =
        new SoilProfile(
            List.of(
                SoilLayer.of(
                    "0-30 cm",
                    asReceived,
                    Quantity.of("thickness", "cm", 30, 1),
                    Quantity.of("bulk density", "g/cm3", 1.4, 0.1))));

    assertThat(profile.kilogramsPerHectare().value()).isCloseTo(84, within(1e-9));
    assertThat(profile.remarks())
        .singleElement()
        .satisfies(
            remark -> {
              assertThat(remark.code()).isEqualTo("not-dry-soil");
              assertThat(remark.text()).contains("0-30 cm is of soil as-received");
            });
    assertThat(field(10, 6, 1.3).remarks()).isEmpty();
  }

  @Test
  void aProfileWithoutALayerIsRefused() {
    assertThatThrownBy(() -> new SoilProfile(List.of())).hasMessage("a profile has a layer");
    assertThatThrownBy(() -> layer("top", 10, 0, 1.3))
        .hasMessage("thickness is above zero, not 0.0");
  }
}
