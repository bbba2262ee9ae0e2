package org.restpoint.acquisition.preparation;

import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.Recipe.Dryness;
import org.restpoint.config.station.Recipe.Portion;
import org.restpoint.config.station.Recipe.Soil;
import org.restpoint.config.station.Recipe.Vessel;
import org.restpoint.config.station.Recipe.Water;
import org.restpoint.stability.preparation.Adjustment;
import org.restpoint.stability.preparation.Dilution;
import org.restpoint.stability.preparation.DilutionStep;
import org.restpoint.stability.preparation.Moisture;
import org.restpoint.stability.preparation.SoilBasis;
import org.restpoint.stability.preparation.SoilPortion;
import org.restpoint.stability.preparation.Tolerance;
import org.restpoint.stability.preparation.Volume;
import org.restpoint.stability.preparation.WaterPortion;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * Translates a recipe of the station file into the terms of the science. A tolerance says nothing
 * but its limits, so it is taken as rectangular, u = a/√3 (JCGM 100:2008, 4.3.7).
 */
final class RecipeTerms {

  /** What a share of adjustor is a share of; the volume itself does not matter. */
  private static final double WHOLE_MILLILITRES = 100;

  private RecipeTerms() {}

  static Recipe of(org.restpoint.config.station.Recipe recipe) {
    if (recipe instanceof Water water) {
      return new WaterRecipe(
          water.name(),
          RecipeText.of(water),
          handling(water.dilution(), "water", water.sample(), water.standard()));
    }
    Soil soil = (Soil) recipe;
    return new SoilRecipe(
        soil.name(),
        RecipeText.of(soil),
        portion(soil.portion()),
        volume("extractant", soil.extractant()),
        soil.moisture().map(RecipeTerms::moisture),
        handling(soil.dilution(), "extract", soil.extract(), soil.standard()));
  }

  private static Handling handling(
      Optional<org.restpoint.config.station.Recipe.Dilution> dilution,
      String liquid,
      Vessel sample,
      Vessel standard) {
    List<DilutionStep> steps =
        dilution.stream()
            .map(
                step ->
                    new DilutionStep(
                        volume("aliquot", step.aliquot()), volume("flask", step.flask())))
            .toList();
    return new Handling(
        new Dilution(steps), new Adjustment(vessel(liquid, sample), vessel("standard", standard)));
  }

  private static WaterPortion vessel(String liquid, Vessel vessel) {
    if (vessel instanceof Vessel.AsItIs as) {
      return new WaterPortion.AsRead(
          new Volume(liquid, WHOLE_MILLILITRES, 0),
          Optional.of(as.adjustorPercent())
              .filter(percent -> percent > 0)
              .map(percent -> new Volume("adjustor", WHOLE_MILLILITRES * percent / 100, 0)));
    }
    Vessel.Poured poured = (Vessel.Poured) vessel;
    Volume taken = volume(liquid, poured.volume());
    Optional<Volume> adjustor = poured.adjustor().map(added -> volume("adjustor", added));
    return poured.flask().isPresent()
        ? new WaterPortion.MadeUp(taken, adjustor, volume("flask", poured.flask().get()))
        : new WaterPortion.Added(taken, adjustor, List.of());
  }

  private static SoilPortion portion(Portion portion) {
    SoilBasis basis =
        portion.dryness() == Dryness.AIR_DRY ? SoilBasis.AIR_DRY : SoilBasis.AS_RECEIVED;
    if (portion instanceof Portion.Scoops scoops) {
      return new SoilPortion.Scooped(
          scoops.count(),
          volume("scoop", scoops.scoop()),
          Quantity.of(
              "density",
              "g/mL",
              scoops.gramsPerMillilitre(),
              scoops.uncertaintyGramsPerMillilitre()),
          scoops.densityFrom(),
          basis);
    }
    Portion.Weighed weighed = (Portion.Weighed) portion;
    return new SoilPortion.Weighed(
        Quantity.within("soil", "g", weighed.grams(), weighed.withinGrams()), basis);
  }

  private static Moisture moisture(org.restpoint.config.station.Recipe.Moisture moisture) {
    return switch (moisture.of()) {
      case DRY_MASS -> Moisture.ofOvenDry(moisture.percent(), moisture.uncertaintyPercent());
      case MOIST_MASS -> Moisture.ofMoist(moisture.percent(), moisture.uncertaintyPercent());
    };
  }

  private static Volume volume(String name, org.restpoint.config.station.Recipe.Volume volume) {
    return Volume.within(
        name, volume.millilitres(), volume.withinMillilitres(), Tolerance.RECTANGULAR);
  }
}
