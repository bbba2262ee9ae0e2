package org.restpoint.acquisition.preparation;

import java.util.OptionalDouble;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * Water: what it held as it was taken, {@code c = c_read · f_s/f_std · f_dil} ({@link
 * org.restpoint.stability.preparation.Adjustment}, {@link
 * org.restpoint.stability.preparation.Dilution}), in the unit that was read.
 *
 * @param name its name
 * @param text what is done
 * @param handling how it comes into the vessel
 */
record WaterRecipe(String name, String text, Handling handling) implements Recipe {

  @Override
  public Reckoned reckon(Quantity read, OptionalDouble moisturePercent) {
    return new Reckoned(
        handling.before(read),
        "water sample",
        text,
        handling.figures(),
        handling.adjustment().remark().stream().toList());
  }
}
