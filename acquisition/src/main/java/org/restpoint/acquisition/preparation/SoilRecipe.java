package org.restpoint.acquisition.preparation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.event.Preparation.Figure;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.preparation.Moisture;
import org.restpoint.stability.preparation.SoilBasis;
import org.restpoint.stability.preparation.SoilExtract;
import org.restpoint.stability.preparation.SoilPortion;
import org.restpoint.stability.preparation.SoilResult;
import org.restpoint.stability.preparation.Volume;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * Soil in an extractant: mg in a kilogram of oven-dry soil ({@link SoilExtract}), or, where the
 * moisture is not known, in a kilogram of soil as it was portioned, named {@code moisture-unknown}.
 *
 * @param name its name
 * @param text what is done
 * @param portion the soil
 * @param extractant what it is shaken with
 * @param moisture the water in it, where the recipe says
 * @param handling how the extract comes into the vessel
 */
record SoilRecipe(
    String name,
    String text,
    SoilPortion portion,
    Volume extractant,
    Optional<Moisture> moisture,
    Handling handling)
    implements Recipe {

  /**
   * Standard uncertainty of a sample's own moisture, % of the oven-dry mass, where the recipe gives
   * none: what two dried portions of one sample commonly differ by (our choice).
   */
  static final double USUAL_UNCERTAINTY_PERCENT = 1;

  @Override
  public Reckoned reckon(Quantity read, OptionalDouble moisturePercent) {
    Optional<Moisture> water =
        moisturePercent.isPresent()
            ? Optional.of(ofSample(moisturePercent.getAsDouble()))
            : moisture;
    SoilResult result = new SoilExtract(portion, extractant, water).of(handling.before(read));
    List<Reason> remarks = new ArrayList<>(result.remarks());
    handling.adjustment().remark().ifPresent(remarks::add);
    return new Reckoned(
        result.quantity("in soil"),
        kind(result.basis()),
        text + moistureText(water, moisturePercent.isPresent()),
        figures(water),
        remarks);
  }

  private Moisture ofSample(double percent) {
    double uncertainty =
        moisture
            .map(known -> known.percentOfOvenDry().standardUncertainty())
            .orElse(USUAL_UNCERTAINTY_PERCENT);
    return Moisture.ofOvenDry(percent, uncertainty);
  }

  private static String kind(SoilBasis basis) {
    return switch (basis) {
      case OVEN_DRY -> "dry soil";
      case AIR_DRY -> "air-dry soil";
      case AS_RECEIVED -> "soil as received";
    };
  }

  private static String moistureText(Optional<Moisture> water, boolean ofSample) {
    if (water.isEmpty()) {
      return "; moisture not known";
    }
    Quantity percent = water.get().percentOfOvenDry();
    return "; moisture %s %% of the oven-dry mass (u = %s %%)%s"
        .formatted(
            RecipeText.number(percent.value()),
            RecipeText.number(percent.standardUncertainty()),
            ofSample ? ", from the sample's record" : "");
  }

  private List<Figure> figures(Optional<Moisture> water) {
    List<Figure> figures = new ArrayList<>();
    if (portion instanceof SoilPortion.Scooped scooped) {
      figures.add(new Figure("scoops", scooped.count(), "1", 0));
    }
    portion.sources().forEach(source -> figures.add(Handling.figure("", source)));
    figures.add(Handling.figure("", extractant.quantity()));
    water.ifPresent(known -> figures.add(Handling.figure("", known.percentOfOvenDry())));
    figures.addAll(handling.figures());
    return figures;
  }
}
