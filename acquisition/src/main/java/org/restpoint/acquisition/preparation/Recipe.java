package org.restpoint.acquisition.preparation;

import java.util.OptionalDouble;
import org.restpoint.stability.uncertainty.Source.Quantity;

/** How a sample was prepared, as far as it changes what the number is of. */
public sealed interface Recipe permits SoilRecipe, WaterRecipe {

  /** What instructions and sample records call it. */
  String name();

  /** What was done, in plain words with its figures, but for the moisture. */
  String text();

  /**
   * What was taken, from what was read in the vessel.
   *
   * @param read what the line through the standards' labels reads, 0 or above: for soil in mg/L,
   *     for water in any unit of concentration
   * @param moisturePercent moisture of this sample, % of the oven-dry mass, 0 or above, where it is
   *     known; it goes before that of the recipe
   */
  Reckoned reckon(Quantity read, OptionalDouble moisturePercent);
}
