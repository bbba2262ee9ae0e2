package org.restpoint.acquisition.preparation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.restpoint.config.station.Recipe.Dilution;
import org.restpoint.config.station.Recipe.Dryness;
import org.restpoint.config.station.Recipe.Moisture;
import org.restpoint.config.station.Recipe.Portion;
import org.restpoint.config.station.Recipe.Soil;
import org.restpoint.config.station.Recipe.Vessel;
import org.restpoint.config.station.Recipe.Volume;
import org.restpoint.config.station.Recipe.Water;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.uncertainty.Source.Quantity;

/** What recipes make of what was read, by hand and by drawing lots. */
class ReckonedTest {

  private static final Quantity ONE = Quantity.exactly("read", "mg/L", 1);
  private static final Vessel AS_LABELLED = new Vessel.AsItIs(0);
  private static final Portion SCOOPS =
      new Portion.Scoops(2, new Volume(4, 0.2), 1.25, 0.1, "ten scoops weighed", Dryness.AIR_DRY);
  private static final Portion BALANCE = new Portion.Weighed(20, 0.05, Dryness.AS_RECEIVED);

  private static Vessel poured(double volume, double adjustor) {
    return new Vessel.Poured(
        new Volume(volume, 0.03), Optional.of(new Volume(adjustor, 0.01)), Optional.empty());
  }

  private static Reckoned reckoned(org.restpoint.config.station.Recipe recipe) {
    return RecipeTerms.of(recipe).reckon(ONE, OptionalDouble.empty());
  }

  /** One gram in one millilitre, dry, with nothing added: mg/L is mg/kg. */
  @Test
  void oneToOneAndNothingElseIsTheIdentity() {
    Soil recipe =
        new Soil(
            "one",
            new Portion.Weighed(10, 0, Dryness.AIR_DRY),
            new Volume(10, 0),
            Optional.of(new Moisture(Moisture.Of.DRY_MASS, 0, 0)),
            Optional.empty(),
            AS_LABELLED,
            AS_LABELLED);
    assertThat(reckoned(recipe).value().value()).isCloseTo(1, within(1e-15));
    assertThat(reckoned(recipe).value().standardUncertainty()).isZero();
  }

  /**
   * By hand: 20 g as received with 20 % of the moist mass are 16 g dry and 4 g of water; 100 mL and
   * 4 mL on 16 g are 6.5; diluted tenfold 65; 51 mL in the vessel for 50 mL of it 66.3.
   */
  @Test
  void aDilutedExtractWithAdjustorIsReckonedBackToDrySoil() {
    Soil recipe =
        new Soil(
            "balance",
            BALANCE,
            new Volume(100, 1),
            Optional.of(new Moisture(Moisture.Of.MOIST_MASS, 20, 0.5)),
            Optional.of(new Dilution(new Volume(10, 0.02), new Volume(100, 0.1))),
            poured(50, 1),
            new Vessel.AsItIs(100.0 / 51));
    Reckoned reckoned = reckoned(recipe);
    assertThat(reckoned.value().value()).isCloseTo(66.3, within(1e-9));
    assertThat(reckoned.value().unit()).isEqualTo("mg/kg");
    assertThat(reckoned.kind()).isEqualTo("dry soil");
    assertThat(reckoned.remarks()).isEmpty();
    assertThat(reckoned.text())
        .isEqualTo(
            "20 g ± 0.05 g of soil as received in 100 mL ± 1 mL of extractant; the extract diluted,"
                + " 10 mL ± 0.02 mL to 100 mL ± 0.1 mL; 50 mL ± 0.03 mL of the extract with 1 mL ±"
                + " 0.01 mL of adjustor; 1.96078 % of the standards is adjustor; moisture 25 %"
                + " of the oven-dry mass (u = 0.78125 %)");
    assertThat(reckoned.figures())
        .extracting(figure -> figure.name())
        .containsExactly(
            "soil",
            "extractant",
            "moisture",
            "dilution: aliquot",
            "dilution: flask",
            "sample: extract",
            "sample: adjustor");
  }

  @Test
  void soilAsReceivedOfUnknownMoistureIsNamedSo() {
    Reckoned reckoned =
        reckoned(
            new Soil(
                "wet",
                BALANCE,
                new Volume(100, 1),
                Optional.empty(),
                Optional.empty(),
                AS_LABELLED,
                AS_LABELLED));
    assertThat(reckoned.value().value()).isCloseTo(5, within(1e-12));
    assertThat(reckoned.kind()).isEqualTo("soil as received");
    assertThat(reckoned.remarks()).extracting(Reason::code).containsExactly("moisture-unknown");
  }

  /** 1 mL in 26 mL is 3.846 % of adjustor, 0.5 mL in 25.5 mL is 1.961 %; 1.04/1.02 = 1.0196. */
  @Test
  void anotherShareOfAdjustorThanTheStandardsIsTold() {
    Reckoned reckoned =
        reckoned(new Water("tile", Optional.empty(), poured(25, 1), poured(25, 0.5)));
    assertThat(reckoned.value().value()).isCloseTo(1.04 / 1.02, within(1e-12));
    assertThat(reckoned.remarks()).extracting(Reason::code).containsExactly("adjustor-mismatch");
  }

  /** 20 mL made up to 50 mL, read by standards as labelled: 2.5. */
  @Test
  void aFlaskDilutes() {
    Vessel flask =
        new Vessel.Poured(
            new Volume(20, 0.02), Optional.empty(), Optional.of(new Volume(50, 0.05)));
    Reckoned reckoned = reckoned(new Water("well", Optional.empty(), flask, AS_LABELLED));
    assertThat(reckoned.value().value()).isCloseTo(2.5, within(1e-12));
    assertThat(reckoned.text())
        .isEqualTo(
            "20 mL ± 0.02 mL of the sample, made up to 50 mL ± 0.05 mL; standards as labelled");
  }

  /**
   * Scoop and extractant anywhere within their tolerances, density, moisture and reading normal.
   * The density's 8 % bends 1/m, which first order leaves out: some 3 % of u.
   */
  @Test
  void theUncertaintyIsThatOfDrawingLots() {
    Soil recipe =
        new Soil(
            "scoop",
            SCOOPS,
            new Volume(25, 0.3),
            Optional.of(new Moisture(Moisture.Of.DRY_MASS, 3, 1)),
            Optional.empty(),
            AS_LABELLED,
            AS_LABELLED);
    Quantity told =
        RecipeTerms.of(recipe)
            .reckon(Quantity.of("read", "mg/L", 8, 0.2), OptionalDouble.empty())
            .value();
    Random random = new Random(20260402);
    double[] drawn =
        DoubleStream.generate(
                () -> {
                  double grams =
                      2
                          * (4 + 0.2 * (2 * random.nextDouble() - 1))
                          * (1.25 + 0.1 * random.nextGaussian());
                  double millilitres = 25 + 0.3 * (2 * random.nextDouble() - 1);
                  double dry = grams * 100 / (103 + random.nextGaussian());
                  double read = 8 + 0.2 * random.nextGaussian();
                  return read * (millilitres + grams - dry) / dry;
                })
            .limit(100_000)
            .toArray();
    double mean = Arrays.stream(drawn).average().orElseThrow();
    double variance = Arrays.stream(drawn).map(x -> (x - mean) * (x - mean)).sum() / drawn.length;
    double half = 2 * told.standardUncertainty();
    double covered =
        Arrays.stream(drawn).filter(x -> Math.abs(x - told.value()) <= half).count()
            / (double) drawn.length;

    assertThat(told.standardUncertainty()).isCloseTo(Math.sqrt(variance), withinPercentage(4));
    assertThat(covered).isBetween(0.94, 0.965);
  }
}
