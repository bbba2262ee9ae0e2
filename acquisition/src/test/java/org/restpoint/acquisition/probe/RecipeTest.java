package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Preparation;
import org.restpoint.acquisition.event.Preparation.Figure;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.event.Result.Outcome;
import org.restpoint.acquisition.event.Result.Reported;
import org.restpoint.acquisition.preparation.Recipes;
import org.restpoint.config.station.Recipe;
import org.restpoint.config.station.Recipe.Dryness;
import org.restpoint.config.station.Recipe.Moisture;
import org.restpoint.config.station.Recipe.Portion;
import org.restpoint.config.station.Recipe.Vessel;
import org.restpoint.config.station.Recipe.Volume;
import org.restpoint.stability.chemistry.Basis;
import org.restpoint.stability.chemistry.ConcentrationUnit;

/** A sample measured by a recipe, from the instruction to the result. */
class RecipeTest {

  private static final Vessel AS_IT_IS = new Vessel.AsItIs(0);
  private static final Vessel PLAIN =
      new Vessel.Poured(new Volume(25, 0.03), Optional.empty(), Optional.empty());
  private static final Vessel ADJUSTED =
      new Vessel.Poured(new Volume(25, 0.03), Optional.of(new Volume(0.5, 0.01)), Optional.empty());

  private static Recipes recipes() {
    Map<String, Recipe> all = new LinkedHashMap<>();
    all.put("dry", soil("dry", Optional.of(new Moisture(Moisture.Of.DRY_MASS, 3, 1))));
    all.put("soil", soil("soil", Optional.empty()));
    all.put("tile", new Recipe.Water("tile", Optional.empty(), ADJUSTED, ADJUSTED));
    all.put("bare", new Recipe.Water("bare", Optional.empty(), ADJUSTED, AS_IT_IS));
    all.put("alone", new Recipe.Water("alone", Optional.empty(), PLAIN, AS_IT_IS));
    return Recipes.of(all);
  }

  /** 2 scoops of 4 mL at 1.25 g/mL are 10 g of air-dry soil, in 25 mL. */
  private static Recipe soil(String name, Optional<Moisture> moisture) {
    return new Recipe.Soil(
        name,
        new Portion.Scoops(2, new Volume(4, 0.2), 1.25, 0.1, "ten scoops weighed", Dryness.AIR_DRY),
        new Volume(25, 0.3),
        moisture,
        Optional.empty(),
        AS_IT_IS,
        AS_IT_IS);
  }

  private static Bench bench() {
    return Bench.of(Setup.nitrate().recipes(recipes())).calibrate("low").calibrate("high");
  }

  private static Result measured(String fields) {
    return measured(bench(), fields, 8);
  }

  private static Result measured(Bench bench, String fields, double value) {
    bench.tell("{\"do\":\"measure\"," + fields.replace('\'', '"') + "}");
    return bench.read(3, bench.millivolts(value)).result();
  }

  private static Reported reported(Result result) {
    return result.reported().orElseThrow();
  }

  private static Amount concentration(Result result) {
    return result.concentration().orElseThrow();
  }

  private static Figure figure(Result result, String name) {
    return result.preparation().map(Preparation::figures).orElseThrow().stream()
        .filter(figure -> figure.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  /**
   * By hand: 10 g air-dry with 3 % of the oven-dry mass are 9.70874 g dry and 0.29126 mL of water,
   * so 8 mg/L in 25.29126 mL are 20.84 mg/kg, 2.605 for each mg/L. Relative u of that factor:
   * 0.98848 of it follows the mass and the extractant, so scoop 0.2/√3/4 = 2.8868 % gives 2.8535 %,
   * density 8 % gives 7.9079 %, extractant 0.3/√3/25 = 0.6928 % gives 0.6848 %; the moisture's 1 %
   * gives 3.5/100/2.605 = 1.3436 %. Together 8.5412 %.
   */
  @Test
  void drySoilIsReckonedFromScoopsExtractantAndMoisture() {
    Result result = measured("'recipe':'dry'");
    assertThat(result.outcome()).isEqualTo(Outcome.SETTLED);
    assertThat(result.flags()).isEmpty();
    assertThat(result.quality()).isEqualTo(1);
    assertThat(concentration(result).value()).isCloseTo(8, within(1e-9));
    assertThat(reported(result).value()).isCloseTo(20.84, within(1e-6));
    assertThat(reported(result).unit()).isEqualTo("mg/kg");
    assertThat(reported(result).basis()).isEqualTo("as-N");
    assertThat(reported(result).kind()).isEqualTo("dry soil");
    assertThat(figure(result, "factor").value()).isCloseTo(2.605, within(1e-9));
    assertThat(figure(result, "factor").unit()).isEqualTo("L/kg");
    assertThat(figure(result, "factor").standardUncertainty() / 2.605)
        .isCloseTo(0.085412, within(2e-6));
    double read = concentration(result).uncertainty() / 8;
    assertThat(reported(result).uncertainty())
        .isCloseTo(20.84 * Math.hypot(read, 2 * 0.085412), withinPercentage(0.01));
    assertThat(reported(result).coverage()).isEqualTo(2);
    assertThat(result.preparation().orElseThrow().text())
        .isEqualTo(
            "2 level scoops of 4 mL ± 0.2 mL of air-dry soil at 1.25 g/mL (u = 0.1 g/mL, ten scoops"
                + " weighed), 10 g in 25 mL ± 0.3 mL of extractant; standards as labelled;"
                + " moisture 3 % of the oven-dry mass (u = 1 %)");
  }

  /** 8 mg/L · 25 mL / 10 g = 20 mg/kg of what was portioned. */
  @Test
  void soilOfUnknownMoistureIsNotCalledDry() {
    Result result = measured("'recipe':'soil'");
    assertThat(reported(result).value()).isCloseTo(20, within(1e-6));
    assertThat(reported(result).kind()).isEqualTo("air-dry soil");
    assertThat(result.flags()).containsExactly("moisture-unknown");
    assertThat(result.quality()).isEqualTo(3);
  }

  /** 25 mL and 6 % of 10 g: 25/10 · 1.06 + 0.06 = 2.71 for each mg/L. */
  @Test
  void aSamplesOwnMoistureGoesBeforeTheRecipes() {
    for (String recipe : new String[] {"dry", "soil"}) {
      Result result =
          measured("'recipe':'%s','sample':{'number':'S-1','moisturePercent':6}".formatted(recipe));
      assertThat(reported(result).value()).isCloseTo(8 * 2.71, within(1e-6));
      assertThat(reported(result).kind()).isEqualTo("dry soil");
      assertThat(figure(result, "moisture").standardUncertainty()).isEqualTo(1);
      assertThat(result.preparation().orElseThrow().text()).endsWith("from the sample's record");
    }
  }

  @Test
  void theRecordNamesTheRecipeUnlessTheInstructionDoes() {
    assertThat(reported(measured("'sample':{'number':'S-1','recipe':'dry'}")).kind())
        .isEqualTo("dry soil");
    Result named =
        measured("'recipe':'tile','sample':{'number':'S-1','recipe':'dry','moisturePercent':6}");
    assertThat(reported(named).kind()).isEqualTo("water sample");
    assertThat(named.preparation().orElseThrow().recipe()).isEqualTo("tile");
  }

  @Test
  void withoutARecipeTheSolutionIsToldAsMeasured() {
    for (String fields : new String[] {"'sample':'S-1'", "'sample':{'number':'S-1'}"}) {
      Result result = measured(fields);
      assertThat(reported(result).kind()).isEqualTo("solution as measured");
      assertThat(result.preparation()).isEmpty();
    }
  }

  /**
   * Sample and standards alike: the factor is 1. Its u by hand: f = 1 + a/s, u(f) =
   * √((0.0057735/25)² + (0.5·0.0173205/625)²) = 2.3136e-4, twice: √2 · 2.3136e-4/1.02 = 3.2077e-4.
   */
  @Test
  void waterWithAdjustorLikeItsStandardsIsWhatWasRead() {
    Result result = measured("'recipe':'tile'");
    assertThat(reported(result).value()).isCloseTo(concentration(result).value(), within(1e-12));
    assertThat(reported(result).unit()).isEqualTo("mg/L");
    assertThat(figure(result, "factor").unit()).isEqualTo("1");
    assertThat(figure(result, "factor").standardUncertainty())
        .isCloseTo(3.2077e-4, withinPercentage(0.01));
    assertThat(result.flags()).isEmpty();
    assertThat(reported(result).uncertainty()).isGreaterThan(concentration(result).uncertainty());
  }

  /** Nothing added and nothing diluted is the identity, to the last bit. */
  @Test
  void waterAloneIsTheIdentity() {
    Result result = measured("'recipe':'alone'");
    assertThat(reported(result).value()).isEqualTo(concentration(result).value());
    assertThat(reported(result).uncertainty())
        .isCloseTo(concentration(result).uncertainty(), within(1e-12));
  }

  /** Adjustor in the sample alone: its volume is corrected, 25.5/25, and the result doubted. */
  @Test
  void adjustorOnOneSideAloneIsFlagged() {
    Result result = measured("'recipe':'bare'");
    assertThat(reported(result).value()).isCloseTo(8 * 1.02, within(1e-9));
    assertThat(result.flags()).containsExactly("adjustor-missing");
  }

  /** 2 mg/L is the limit of the range; for the soil it is 2 · 2.605 mg/kg. */
  @Test
  void aLimitInTheVesselIsALimitOfTheSoil() {
    Bench bench =
        Bench.of(Setup.nitrate().recipes(recipes()).with(Changes.range(2, 50)))
            .calibrate("low")
            .calibrate("high");
    Result below = measured(bench, "'recipe':'dry'", 1);
    assertThat(reported(below).relation()).isEqualTo("<");
    assertThat(reported(below).value()).isCloseTo(5.21, within(1e-9));
    assertThat(reported(below).uncertainty()).isPositive();
    Result above = measured(bench, "'recipe':'dry'", 80);
    assertThat(reported(above).relation()).isEqualTo(">");
    assertThat(reported(above).value()).isCloseTo(50 * 2.605, within(1e-9));
  }

  /** 1 mmol/L of nitrate is 14.007 mg/L as N, in 25 mL with 10 g: 35.0175 mg/kg. */
  @Test
  void soilIsToldInMilligramsWhateverTheProbesUnit() {
    Bench bench =
        Bench.of(
                Setup.of("nitrate", Basis.AS_N, ConcentrationUnit.MILLIMOLES_PER_LITRE)
                    .standard("low", 0.2)
                    .standard("high", 5)
                    .recipes(recipes()))
            .calibrate("low")
            .calibrate("high");
    Result soil = measured(bench, "'recipe':'soil'", 1);
    assertThat(reported(soil).value()).isCloseTo(35.0175, within(1e-6));
    assertThat(reported(soil).unit()).isEqualTo("mg/kg");
    Result water = measured(bench, "'recipe':'bare'", 1);
    assertThat(reported(water).value()).isCloseTo(1.02, within(1e-9));
    assertThat(reported(water).unit()).isEqualTo("mmol/L");
  }

  @Test
  void anUnknownRecipeIsRefusedWithTheKnownOnes() {
    Result result = bench().tell("{\"do\":\"measure\",\"recipe\":\"dyr\"}").result();
    assertThat(result.outcome()).isEqualTo(Outcome.REFUSED);
    assertThat(result.flags()).containsExactly("recipe-unknown");
    assertThat(result.reasons().get(0).text())
        .isEqualTo("recipe dyr is not one of this station's recipes: dry, soil, tile, bare, alone");
    assertThat(
            Bench.of(Setup.nitrate())
                .tell("{\"do\":\"measure\",\"sample\":{\"number\":\"S-1\",\"recipe\":\"dry\"}}")
                .result()
                .reasons()
                .get(0)
                .text())
        .isEqualTo("recipe dry is not known: the station file has no recipes");
  }

  /** One record may go with the pH and the nitrate of one slurry. */
  @Test
  void aPhHasNoRecipeAndLeavesThatOfARecordAlone() {
    Bench bench =
        Bench.of(Changes.ph("phthalate", "borax").recipes(recipes()))
            .calibrate("phthalate")
            .calibrate("borax");
    Result refused = bench.tell("{\"do\":\"measure\",\"recipe\":\"dry\"}").result();
    assertThat(refused.flags()).containsExactly("recipe-of-ph");
    Result read = measured(bench, "'sample':{'number':'S-1','recipe':'dry'}", 7);
    assertThat(read.outcome()).isEqualTo(Outcome.SETTLED);
    assertThat(read.preparation()).isEmpty();
    assertThat(reported(read).unit()).isEqualTo("[pH]");
  }

  @Test
  void aReadingThatNeverSettledHasNoPreparation() {
    Result result = bench().tell("{\"do\":\"measure\",\"recipe\":\"dry\"}").restless(61).result();
    assertThat(result.outcome()).isEqualTo(Outcome.UNSETTLED);
    assertThat(result.preparation()).isEmpty();
  }
}
