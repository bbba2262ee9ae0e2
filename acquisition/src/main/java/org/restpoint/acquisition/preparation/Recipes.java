package org.restpoint.acquisition.preparation;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.restpoint.stability.calibration.Reason;

/**
 * The recipes that a person may name.
 *
 * @param byName by name, in the station file's order
 */
public record Recipes(Map<String, Recipe> byName) {

  /** Copies the map in its order. */
  public Recipes {
    byName = Collections.unmodifiableMap(new LinkedHashMap<>(byName));
  }

  /** No recipes: every result is of the solution as measured. */
  public static Recipes none() {
    return new Recipes(Map.of());
  }

  /** The recipes of a checked station file. */
  public static Recipes of(Map<String, org.restpoint.config.station.Recipe> written) {
    Map<String, Recipe> recipes = new LinkedHashMap<>();
    written.forEach((name, recipe) -> recipes.put(name, RecipeTerms.of(recipe)));
    return new Recipes(recipes);
  }

  /** The recipe of that name, if it is one. */
  public Optional<Recipe> find(String name) {
    return Optional.ofNullable(byName.get(name));
  }

  /** What to say of a name that is none of them. */
  public Reason unknown(String name) {
    List<String> known = List.copyOf(byName.keySet());
    return new Reason(
        "recipe-unknown",
        known.isEmpty()
            ? "recipe %s is not known: the station file has no recipes".formatted(name)
            : "recipe %s is not one of this station's recipes: %s"
                .formatted(name, String.join(", ", known)),
        "Name one of them, or write it into the station file under recipes.");
  }
}
