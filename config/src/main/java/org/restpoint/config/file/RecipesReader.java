package org.restpoint.config.file;

import java.util.LinkedHashMap;
import java.util.Map;
import org.restpoint.config.station.Recipe;

/** Reads how samples are prepared. */
final class RecipesReader {

  private static final String RECIPES = "a mapping from each recipe's name to how it is done";

  private RecipesReader() {}

  /** The recipes by name; those that were refused are left out. */
  static Map<String, Recipe> read(Entry entry) {
    Map<String, Recipe> recipes = new LinkedHashMap<>();
    entry
        .section(RECIPES)
        .ifPresent(
            section ->
                section
                    .children()
                    .forEach(
                        (name, child) -> {
                          StationReader.isName(name, child);
                          RecipeReader.read(name, child)
                              .ifPresent(recipe -> recipes.put(name, recipe));
                        }));
    return recipes;
  }
}
