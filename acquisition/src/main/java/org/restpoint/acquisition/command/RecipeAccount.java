package org.restpoint.acquisition.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.restpoint.acquisition.preparation.Recipe;
import org.restpoint.acquisition.preparation.Recipes;
import org.restpoint.acquisition.preparation.Reckoned;
import org.restpoint.acquisition.probe.Words;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.uncertainty.Source.Quantity;

/** Says back what each recipe of a station file does, and what it makes of 1 mg/L. */
final class RecipeAccount {

  private static final int COVERAGE = 2;

  private RecipeAccount() {}

  /** For each recipe what is done, then what follows from it. */
  static List<List<String>> of(Map<String, org.restpoint.config.station.Recipe> recipes) {
    return Recipes.of(recipes).byName().values().stream().map(RecipeAccount::account).toList();
  }

  private static List<String> account(Recipe recipe) {
    Reckoned one = recipe.reckon(Quantity.exactly("read", "mg/L", 1), OptionalDouble.empty());
    Quantity value = one.value();
    List<String> lines = new ArrayList<>();
    lines.add(recipe.name() + ": " + one.text());
    lines.add(
        "1 mg/L in the vessel is %s %s of %s; the preparation alone makes it uncertain by %s %% (k = %d)"
            .formatted(
                Words.number(value.value()),
                value.unit(),
                one.kind(),
                Words.number(100 * COVERAGE * value.standardUncertainty() / value.value()),
                COVERAGE));
    for (Reason remark : one.remarks()) {
      String whose =
          remark.code().equals("moisture-unknown") ? " of a sample without its own moisture" : "";
      lines.add("each result%s is flagged %s: %s".formatted(whose, remark.code(), remark.remedy()));
    }
    return lines;
  }
}
