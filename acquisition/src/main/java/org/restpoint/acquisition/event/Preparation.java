package org.restpoint.acquisition.event;

import java.util.List;

/**
 * How a sample was prepared, as the recipe stood when it was read.
 *
 * @param recipe the recipe's name in the station file
 * @param text what was done, in plain words with its figures
 * @param figures the figures that the result was reckoned with
 */
public record Preparation(String recipe, String text, List<Figure> figures) {

  public Preparation {
    figures = List.copyOf(figures);
  }

  /**
   * A figure of a recipe.
   *
   * @param name what it is of
   * @param value its value
   * @param unit its UCUM unit
   * @param standardUncertainty its standard uncertainty (k = 1) in that unit
   */
  public record Figure(String name, double value, String unit, double standardUncertainty) {}
}
