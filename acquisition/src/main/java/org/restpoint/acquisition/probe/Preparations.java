package org.restpoint.acquisition.probe;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.preparation.Prepared;
import org.restpoint.acquisition.preparation.Recipe;
import org.restpoint.acquisition.preparation.Recipes;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.chemistry.ConcentrationUnit;

/**
 * Which recipe a sample was prepared by: the one that the instruction names, else the one in the
 * sample's record, else none. A sample's own moisture goes before the recipe's.
 */
final class Preparations {

  /** The field of a sample's record that names its recipe. */
  private static final String RECIPE = "recipe";

  /** The field of a sample's record with its moisture, % of the oven-dry mass. */
  private static final String MOISTURE = "moisturePercent";

  /** Peat holds several times its own dry mass; the station file allows as much. */
  private static final double MOST_MOISTURE_PERCENT = 1000;

  private final Recipes recipes;
  private final Scale scale;

  Preparations(ProbeSettings settings) {
    this.recipes = settings.recipes();
    this.scale = settings.scale();
  }

  /**
   * What became of a result.
   *
   * @param prepared the result for what was taken, where a recipe was named and could be used
   * @param flags what to be careful about
   */
  record Outcome(Optional<Prepared> prepared, List<String> flags) {}

  /** Why a sample cannot be measured as it is asked for. */
  Optional<Reason> trouble(Instruction.Measure measure) {
    if (measure.recipe().isPresent() && scale instanceof Scale.OfPh) {
      return Optional.of(ofPh());
    }
    return name(measure.recipe(), measure.sample())
        .flatMap(name -> trouble(name, measure.sample()));
  }

  /** What the recipe makes of an amount; a record may have changed since the reading began. */
  Outcome of(Attempt attempt, Amount amount) {
    if (!(attempt.purpose() instanceof Purpose.OfSample of)) {
      return new Outcome(Optional.empty(), List.of());
    }
    Optional<String> asked =
        attempt
            .instruction()
            .filter(given -> given.task() instanceof Instruction.Measure)
            .flatMap(given -> ((Instruction.Measure) given.task()).recipe());
    Optional<String> name = name(asked, of.sample());
    if (name.isEmpty()) {
      return new Outcome(Optional.empty(), List.of());
    }
    Optional<Reason> trouble = trouble(name.get(), of.sample());
    if (trouble.isPresent()) {
      return new Outcome(Optional.empty(), List.of(trouble.get().code()));
    }
    Recipe recipe = recipes.find(name.get()).orElseThrow();
    Prepared prepared =
        Prepared.of(recipe, amount, milligramsPerLitre(), moisturePercent(of.sample()));
    return new Outcome(Optional.of(prepared), prepared.flags());
  }

  /** A record may be of a sample of which pH is read as well: its recipe is not for that. */
  private Optional<String> name(Optional<String> asked, Optional<ObjectNode> sample) {
    return scale instanceof Scale.OfPh
        ? Optional.empty()
        : asked.or(() -> field(sample, RECIPE).map(Preparations::word));
  }

  private static Reason ofPh() {
    return new Reason(
        "recipe-of-ph",
        "a pH is that of the solution the electrode stands in; no recipe turns it into an amount",
        "Measure without the recipe; how the sample was prepared may stand in its notes.");
  }

  private Optional<Reason> trouble(String name, Optional<ObjectNode> sample) {
    if (recipes.find(name).isEmpty()) {
      return Optional.of(recipes.unknown(name));
    }
    return field(sample, MOISTURE)
        .filter(given -> !isMoisture(given))
        .map(
            given ->
                new Reason(
                    "moisture-impossible",
                    "moisturePercent in the sample's record is a number from 0 to 1000 (% of the"
                        + " oven-dry mass), not "
                        + (given.isNumber() ? given.asText() : "something else"),
                    "Correct it in the sample's record, or leave it out."));
  }

  private static OptionalDouble moisturePercent(Optional<ObjectNode> sample) {
    return field(sample, MOISTURE)
        .map(given -> OptionalDouble.of(given.doubleValue()))
        .orElseGet(OptionalDouble::empty);
  }

  private static boolean isMoisture(JsonNode given) {
    double percent = given.doubleValue();
    return given.isNumber() && percent >= 0 && percent <= MOST_MOISTURE_PERCENT;
  }

  private static Optional<JsonNode> field(Optional<ObjectNode> sample, String name) {
    return sample.map(record -> record.path(name)).filter(value -> !isAbsent(value));
  }

  private static String word(JsonNode value) {
    return value.isTextual() ? value.textValue() : value.toString();
  }

  private static boolean isAbsent(JsonNode value) {
    return value.isMissingNode()
        || value.isNull()
        || (value.isTextual() && value.textValue().isBlank());
  }

  /** How many mg/L one of the results' unit is, on their basis. */
  private double milligramsPerLitre() {
    Scale.OfConcentration in = (Scale.OfConcentration) scale;
    return in.in() == ConcentrationUnit.MILLIGRAMS_PER_LITRE
        ? 1
        : 1e3 * in.molesPerLitre(1) * in.analyte().gramsPerMole(in.counted());
  }
}
