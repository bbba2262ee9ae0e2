package org.restpoint.acquisition.preparation;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.restpoint.acquisition.event.Preparation;
import org.restpoint.acquisition.event.Preparation.Figure;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.event.Result.Reported;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * A result for what was taken. Its relation is that of what was read: a limit in the vessel is a
 * limit for the sample.
 *
 * @param reported the amount that was asked for
 * @param preparation how the sample was prepared
 * @param flags codes that say what to be careful about
 */
public record Prepared(Reported reported, Preparation preparation, List<String> flags) {

  private static final String MASS_CONCENTRATION = "mg/L";

  /** mg/kg for each mg/L. */
  private static final String MASS_FACTOR = "L/kg";

  public Prepared {
    flags = List.copyOf(flags);
  }

  /**
   * Reckons back from the vessel.
   *
   * @param recipe how the sample was prepared
   * @param amount what was read in the vessel
   * @param milligramsPerLitre how many mg/L one of the amount's unit is, on the amount's basis
   * @param moisturePercent moisture of this sample, % of the oven-dry mass, 0 or above, where it is
   *     known
   */
  public static Prepared of(
      Recipe recipe, Amount amount, double milligramsPerLitre, OptionalDouble moisturePercent) {
    boolean soil = recipe instanceof SoilRecipe;
    double scale = soil ? milligramsPerLitre : 1;
    String unit = soil ? MASS_CONCENTRATION : amount.unit();
    Quantity read =
        Quantity.of(
            "read", unit, scale * amount.value(), scale * amount.uncertainty() / amount.coverage());
    Reckoned reckoned = recipe.reckon(read, moisturePercent);
    Quantity value = reckoned.value();
    List<Figure> figures = new ArrayList<>(reckoned.figures());
    figures.add(factor(recipe, unit, moisturePercent));
    return new Prepared(
        new Reported(
            value.value(),
            value.unit(),
            amount.basis(),
            amount.coverage() * value.standardUncertainty(),
            amount.coverage(),
            amount.relation(),
            reckoned.kind()),
        new Preparation(recipe.name(), reckoned.text(), figures),
        reckoned.remarks().stream().map(Reason::code).toList());
  }

  private static Figure factor(Recipe recipe, String unit, OptionalDouble moisturePercent) {
    Quantity one = recipe.reckon(Quantity.exactly("read", unit, 1), moisturePercent).value();
    return new Figure(
        "factor",
        one.value(),
        one.unit().equals(unit) ? "1" : MASS_FACTOR,
        one.standardUncertainty());
  }
}
