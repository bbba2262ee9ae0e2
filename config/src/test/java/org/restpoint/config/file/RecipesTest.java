package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.config.station.Recipe;
import org.restpoint.config.station.Recipe.Dilution;
import org.restpoint.config.station.Recipe.Dryness;
import org.restpoint.config.station.Recipe.Moisture;
import org.restpoint.config.station.Recipe.Portion;
import org.restpoint.config.station.Recipe.Vessel;
import org.restpoint.config.station.Recipe.Volume;

/** Recipes of preparation, read whole and with several mistakes at once. */
class RecipesTest {

  @TempDir Path folder;
  private Map<String, Recipe> recipes = Map.of();

  @BeforeEach
  void read() {
    recipes = new Fixture(folder).understood(Fixture.example("recipes.yaml")).recipes();
  }

  private Recipe recipe(String name) {
    return Objects.requireNonNull(recipes.get(name), name);
  }

  @Test
  void aStationWithoutRecipesHasNone() {
    assertThat(new Fixture(folder).understood(Fixture.example("bench.yaml")).recipes()).isEmpty();
  }

  @Test
  void recipesComeInTheFilesOrder() {
    assertThat(recipes.keySet()).containsExactly("scoop", "balance", "tile", "well");
  }

  @Test
  void soilByLevelScoopsIsReadInTheSlurryWhereNothingElseIsSaid() {
    assertThat(recipe("scoop"))
        .isEqualTo(
            new Recipe.Soil(
                "scoop",
                new Portion.Scoops(
                    2, new Volume(4, 0.2), 1.25, 0.1, "ten scoops weighed", Dryness.AIR_DRY),
                new Volume(25, 0.3),
                Optional.of(new Moisture(Moisture.Of.DRY_MASS, 3, 1)),
                Optional.empty(),
                new Vessel.AsItIs(0),
                new Vessel.AsItIs(0)));
  }

  @Test
  void soilByMassIsReadInTheUnitsOfTheScience() {
    assertThat(recipe("balance"))
        .isEqualTo(
            new Recipe.Soil(
                "balance",
                new Portion.Weighed(20, 0.05, Dryness.AS_RECEIVED),
                new Volume(100, 1),
                Optional.of(new Moisture(Moisture.Of.MOIST_MASS, 20, 0.5)),
                Optional.of(new Dilution(new Volume(10, 0.02), new Volume(100, 0.1))),
                new Vessel.Poured(
                    new Volume(50, 0.05), Optional.of(new Volume(1, 0.01)), Optional.empty()),
                new Vessel.AsItIs(2)));
  }

  @Test
  void waterHasAdjustorOrAFlaskOrBoth() {
    Optional<Volume> adjustor = Optional.of(new Volume(0.5, 0.01));
    assertThat(recipe("tile"))
        .isEqualTo(
            new Recipe.Water(
                "tile",
                Optional.empty(),
                new Vessel.Poured(new Volume(25, 0.03), adjustor, Optional.empty()),
                new Vessel.Poured(
                    new Volume(25, 0.03), adjustor, Optional.of(new Volume(50, 0.06)))));
    assertThat(recipe("well"))
        .isEqualTo(
            new Recipe.Water(
                "well",
                Optional.empty(),
                new Vessel.Poured(
                    new Volume(20, 0.02), Optional.empty(), Optional.of(new Volume(50, 0.05))),
                new Vessel.AsItIs(0)));
  }

  @Test
  void theMistakesOfAllRecipesAreToldAtOnce() {
    String text =
        """
        station: a
        broker: embedded
        recipes:
          one:
            soil: { scoops: 0, scoop: 4, density: 1.25 }
            moisture: { of-dry: 3, uncertainty: 1 }
          two: {}
          three:
            water: { volume: 25 mL, adjustor: 1 mL }
            standard: {}
          four: { wtaer: { volume: 25 mL, within: 1 mL } }
        probes: { t: { measures: temperature, link: { mqtt: { topic: t, celsius: "" } } } }
        """;
    String volume = "expected a volume in mL, L or uL, e.g. 25 mL; found ";
    String tolerance = "expected a tolerance in mL, L or uL; found nothing";

    assertThat(new Fixture(folder).problems(text))
        .containsExactly(
            "recipes.one.extractant (line 4): expected a mapping like"
                + " { volume: 25 mL, within: 0.3 mL }; found nothing",
            "recipes.one.soil.basis (line 5): expected one of air-dry, as-received; found nothing",
            "recipes.one.soil.scoops (line 5): expected a whole number from 1 to 100; found 0",
            "recipes.one.soil.scoop (line 5): " + volume + "4 (no unit)",
            "recipes.one.soil.within (line 5): " + tolerance,
            "recipes.one.soil.density (line 5): expected a density in g/mL or g/cm3,"
                + " e.g. 1.25 g/mL; found 1.25 (no unit)",
            "recipes.one.soil.density-uncertainty (line 5): expected a standard uncertainty in"
                + " g/mL or g/cm3; found nothing",
            "recipes.one.soil.density-from (line 5): expected where the density comes from;"
                + " found nothing",
            "recipes.one.moisture.of-dry (line 6): expected a share in %, e.g. 1 %;"
                + " found 3 (no unit)",
            "recipes.one.moisture.uncertainty (line 6): expected a share in %, e.g. 1 %;"
                + " found 1 (no unit)",
            "recipes.two (line 7): expected exactly one of soil, water; found none of them",
            "recipes.three.water.within (line 9): " + tolerance,
            "recipes.three.water.adjustor-within (line 9): " + tolerance,
            "recipes.three.standard.volume (line 10): " + volume + "nothing",
            "recipes.three.standard.within (line 10): " + tolerance,
            "recipes.four.wtaer (line 11): expected one of soil, water, extractant, moisture,"
                + " dilution, extract, standard; found wtaer; did you mean water?");
  }
}
