package org.restpoint.stability.preparation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;
import org.restpoint.stability.preparation.SoilPortion.Scooped;
import org.restpoint.stability.preparation.SoilPortion.Weighed;
import org.restpoint.stability.uncertainty.Contribution;
import org.restpoint.stability.uncertainty.MonteCarlo;
import org.restpoint.stability.uncertainty.Source.Quantity;

class SoilExtractTest {

  private static final Volume EXTRACTANT = new Volume("extractant", 40, 0.1);
  private static final Weighed MOIST =
      new Weighed(Quantity.of("soil", "g", 20, 0.02), SoilBasis.AS_RECEIVED);
  private static final Quantity READ = Quantity.of("read", "mg/L", 12, 0.24);

  private static Quantity grams(String name, double grams) {
    return Quantity.of(name, "g", grams, 0.05);
  }

  private static Moisture fromPan() {
    Published table = Published.table("moisture-weighings");
    return Moisture.ofWeighings(
        grams("pan", table.numbers("pan")[0]),
        grams("wet", table.numbers("wet")[0]),
        grams("dry", table.numbers("dry")[0]));
  }

  private static Scooped scoop(int count, double scoopMillilitres) {
    return new Scooped(
        count,
        new Volume("scoop", scoopMillilitres, 0.02 * scoopMillilitres),
        Quantity.of("density", "g/mL", Scooped.SUGGESTED_GRAMS_PER_MILLILITRE, 0.06),
        "what the scoop was made for",
        SoilBasis.AIR_DRY);
  }

  @Test
  void aPanOfWetSoilHasTheCoursesMoistureAndDryMass() {
    Published table = Published.table("moisture-weighings");
    Quantity moisture = fromPan().percentOfOvenDry();

    assertThat(moisture.value()).isCloseTo(table.numbers("percent")[0], within(0.05));
    assertThat(table.numbers("moist")[0] * 100 / (100 + moisture.value()))
        .isCloseTo(table.numbers("ovenDry")[0], within(0.05));
    // By hand: dW/dwet = 100/22.1, dW/ddry = -100·26.7/22.1², dW/dpan = 100·4.6/22.1².
    double square = 22.1 * 22.1;
    double expected =
        0.05 * 100 * Math.sqrt(1 / square + Math.pow(26.7 / square, 2) + Math.pow(4.6 / square, 2));
    assertThat(moisture.standardUncertainty()).isCloseTo(expected, withinPercentage(0.01));
  }

  @Test
  void moistureOfTheMoistMassIsTurnedIntoThatOfTheDry() {
    Quantity moisture = Moisture.ofMoist(20, 0.5).percentOfOvenDry();

    assertThat(moisture.value()).isCloseTo(25, within(1e-12));
    assertThat(moisture.standardUncertainty())
        .isCloseTo(0.5 * 1e4 / (80 * 80), withinPercentage(0.001));
    assertThat(Moisture.ofMoist(0, 0).percentOfOvenDry().value()).isZero();
  }

  /** The mass is nominal in the source, so the density comes out exactly. */
  @Test
  void aScoopHoldsWhatTheLaboratorySaysAndItsStandardsAreEnteredTwofold() {
    Published table = Published.table("soil-scoops");
    for (int i = 0; i < table.rows().size(); i++) {
      Scooped portion = scoop(1, table.numbers("scoopMillilitres")[i]);
      double[] nominal = portion.sources().stream().mapToDouble(source -> source.value()).toArray();
      SoilResult result =
          new SoilExtract(
                  portion,
                  new Volume("extractant", table.numbers("extractantMillilitres")[i], 0.1),
                  Optional.empty())
              .of(Quantity.exactly("read", "mg/L", table.numbers("milligramsPerLitre")[i]));

      assertThat(portion.grams(nominal)).isCloseTo(table.numbers("grams")[i], within(1e-12));
      assertThat(result.milligramsPerKilogram().value())
          .isCloseTo(table.numbers("milligramsPerKilogram")[i], within(1e-9));
    }
  }

  /**
   * 12.00 mg/L, 40 mL, 20.00 g at 20.814 %: by hand, 16.5543 g dry, 3.4457 mL of water, 31.493
   * mg/kg; without the water 28.995.
   */
  @Test
  void theWaterInMoistSoilDilutesTheExtract() {
    SoilResult result = new SoilExtract(MOIST, EXTRACTANT, Optional.of(fromPan())).of(READ);

    assertThat(result.milligramsPerKilogram().value()).isCloseTo(31.493, within(0.0005));
    assertThat(result.basis()).isEqualTo(SoilBasis.OVEN_DRY);
    assertThat(result.remarks()).isEmpty();
  }

  /**
   * The laboratories' rule, oven-dry = air-dry·(100+M)/100 (ASPAC method 2A1, seen), leaves out
   * that the soil's water dilutes the extract; that water is C·M/100 more.
   */
  @Test
  void theOvenDryResultIsTheAirDryOneByTheLaboratoriesRuleAndTheSoilsOwnWater() {
    double moisture = 4.5;
    double airDry =
        new SoilExtract(MOIST, EXTRACTANT, Optional.empty())
            .of(READ)
            .milligramsPerKilogram()
            .value();
    double ovenDry =
        new SoilExtract(MOIST, EXTRACTANT, Optional.of(Moisture.ofOvenDry(moisture, 0)))
            .of(READ)
            .milligramsPerKilogram()
            .value();

    assertThat(ovenDry)
        .isCloseTo(airDry * (100 + moisture) / 100 + 12 * moisture / 100, within(1e-12));
  }

  @Test
  void withoutItsMoistureTheResultIsNotOfDrySoil() {
    SoilResult result = new SoilExtract(MOIST, EXTRACTANT, Optional.empty()).of(READ);

    assertThat(result.basis()).isEqualTo(SoilBasis.AS_RECEIVED);
    assertThat(result.milligramsPerKilogram().value()).isCloseTo(24, within(1e-12));
    assertThat(result.remarks())
        .singleElement()
        .satisfies(
            remark -> {
              assertThat(remark.code()).isEqualTo("moisture-unknown");
              assertThat(remark.text()).contains("24.00 mg/kg is of soil as-received");
            });
  }

  @Test
  void anErrorOfTheScoopCountsForEveryScoop() {
    double one =
        new SoilExtract(scoop(1, 16), EXTRACTANT, Optional.empty())
            .of(READ)
            .milligramsPerKilogram()
            .standardUncertainty();
    double two =
        new SoilExtract(scoop(2, 16), EXTRACTANT, Optional.empty())
            .of(READ)
            .milligramsPerKilogram()
            .standardUncertainty();

    // Half the value with the same relative uncertainty: nothing averages out.
    assertThat(two).isCloseTo(one / 2, withinPercentage(0.001));
  }

  /** Of 100 000 trials the standard deviation is known to 0.22 %. */
  @Test
  void thePropagationOfDistributionsAgrees() {
    SoilResult result =
        new SoilExtract(scoop(2, 8), EXTRACTANT, Optional.of(Moisture.ofOvenDry(20, 1))).of(READ);
    MonteCarlo drawn =
        MonteCarlo.of(
            result.milligramsPerKilogram().contributions().stream()
                .map(Contribution::source)
                .toList(),
            x -> {
              double mass = 2 * x[2] * x[3];
              double dry = mass / (1 + x[4] / 100);
              return x[0] * (x[1] + mass - dry) / dry;
            },
            100_000,
            20260603);

    // Beyond the first order: the mass is known to 5 %, and stands below the line, 0.3 %.
    assertThat(result.milligramsPerKilogram().value())
        .isCloseTo(drawn.mean(), withinPercentage(0.4));
    assertThat(result.milligramsPerKilogram().standardUncertainty() / drawn.standardDeviation())
        .isCloseTo(1, within(0.02));
  }

  @Test
  void soilsThatCannotBeAreRefused() {
    assertThatThrownBy(() -> Moisture.ofMoist(100, 1))
        .hasMessage("moist soil is less than 100 % water, not 100.0 %");
    assertThatThrownBy(
            () -> Moisture.ofWeighings(grams("pan", 10), grams("wet", 30), grams("dry", 31)))
        .hasMessageStartingWith("soil loses mass by drying");
    assertThatThrownBy(() -> new Weighed(grams("soil", 20), SoilBasis.OVEN_DRY))
        .hasMessageStartingWith("soil is portioned as received or air-dry");
    assertThatThrownBy(() -> scoop(0, 16)).hasMessage("one scoop or more, not 0");
    assertThatThrownBy(
            () ->
                new Scooped(
                    1,
                    new Volume("scoop", 16, 0.1),
                    Quantity.of("density", "g/mL", 1.2, 0.1),
                    " ",
                    SoilBasis.AIR_DRY))
        .hasMessage("a density says where it comes from");
    assertThatThrownBy(
            () ->
                new SoilExtract(MOIST, EXTRACTANT, Optional.empty())
                    .of(Quantity.exactly("read", "mmol/L", 1)))
        .hasMessage("read is given in mg/L, not in mmol/L");
  }
}
