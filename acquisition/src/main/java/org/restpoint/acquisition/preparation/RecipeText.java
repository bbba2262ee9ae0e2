package org.restpoint.acquisition.preparation;

import java.math.BigDecimal;
import java.math.MathContext;
import org.restpoint.config.station.Recipe;
import org.restpoint.config.station.Recipe.Dilution;
import org.restpoint.config.station.Recipe.Dryness;
import org.restpoint.config.station.Recipe.Portion;
import org.restpoint.config.station.Recipe.Vessel;
import org.restpoint.config.station.Recipe.Volume;

/** Says what a recipe does in plain words, with the figures of the station file. */
final class RecipeText {

  /** As many digits as a person writes into a station file. */
  private static final MathContext SIX_DIGITS = new MathContext(6);

  private RecipeText() {}

  static String of(Recipe recipe) {
    if (recipe instanceof Recipe.Water water) {
      return vessel(water.sample(), "the sample")
          + water.dilution().map(step -> ", " + diluted(step) + " before").orElse("")
          + standards(water.standard());
    }
    Recipe.Soil soil = (Recipe.Soil) recipe;
    return "%s in %s of extractant%s%s%s"
        .formatted(
            portion(soil.portion()),
            volume(soil.extractant()),
            soil.dilution().map(step -> "; the extract " + diluted(step)).orElse(""),
            isAlone(soil.extract()) ? "" : "; " + vessel(soil.extract(), "the extract"),
            standards(soil.standard()));
  }

  private static String portion(Portion portion) {
    String soil = portion.dryness() == Dryness.AIR_DRY ? "air-dry soil" : "soil as received";
    if (portion instanceof Portion.Scoops scoops) {
      double grams = scoops.count() * scoops.scoop().millilitres() * scoops.gramsPerMillilitre();
      return "%d level %s of %s of %s at %s g/mL (u = %s g/mL, %s), %s g"
          .formatted(
              scoops.count(),
              scoops.count() == 1 ? "scoop" : "scoops",
              volume(scoops.scoop()),
              soil,
              number(scoops.gramsPerMillilitre()),
              number(scoops.uncertaintyGramsPerMillilitre()),
              scoops.densityFrom(),
              number(grams));
    }
    Portion.Weighed weighed = (Portion.Weighed) portion;
    return "%s g ± %s g of %s"
        .formatted(number(weighed.grams()), number(weighed.withinGrams()), soil);
  }

  private static String diluted(Dilution dilution) {
    return "diluted, %s to %s".formatted(volume(dilution.aliquot()), volume(dilution.flask()));
  }

  private static String standards(Vessel standard) {
    return isAlone(standard) ? "; standards as labelled" : "; " + vessel(standard, "the standards");
  }

  private static boolean isAlone(Vessel vessel) {
    return vessel instanceof Vessel.AsItIs as && as.adjustorPercent() == 0;
  }

  private static String vessel(Vessel vessel, String of) {
    if (vessel instanceof Vessel.AsItIs as) {
      return "%s %% of %s is adjustor".formatted(number(as.adjustorPercent()), of);
    }
    Vessel.Poured poured = (Vessel.Poured) vessel;
    return "%s of %s%s%s"
        .formatted(
            volume(poured.volume()),
            of,
            poured.adjustor().map(added -> " with " + volume(added) + " of adjustor").orElse(""),
            poured.flask().map(flask -> ", made up to " + volume(flask)).orElse(""));
  }

  private static String volume(Volume volume) {
    return "%s mL ± %s mL"
        .formatted(number(volume.millilitres()), number(volume.withinMillilitres()));
  }

  /** A number with six significant digits at most and no exponent. */
  static String number(double value) {
    BigDecimal rounded = new BigDecimal(value).round(SIX_DIGITS).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString();
  }
}
