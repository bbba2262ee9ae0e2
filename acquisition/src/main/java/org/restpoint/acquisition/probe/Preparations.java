package org.restpoint.acquisition.probe;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.event.SampleRecord;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.preparation.Prepared;
import org.restpoint.acquisition.preparation.Recipe;
import org.restpoint.acquisition.preparation.Recipes;
import org.restpoint.acquisition.sample.Merged;
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

  /** What a preparation makes one careful about. */
  private static final Set<String> FLAGS =
      Set.of("recipe-unknown", "moisture-unknown", "adjustor-missing", "adjustor-mismatch");

  private final Archive archive;
  private final Recipes recipes;
  private final Scale scale;

  Preparations(ProbeSettings settings, Archive archive) {
    this.archive = archive;
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
    return name(measure.recipe(), known(measure.sample())).flatMap(this::trouble);
  }

  /** What is kept of a sample, with what is told of it now. */
  Optional<ObjectNode> known(Optional<ObjectNode> told) {
    return told.map(
        fields ->
            Merged.of(
                    archive.record(fields.path("number").asText("")).map(SampleRecord::sample),
                    fields)
                .sample());
  }

  /**
   * What the recipe makes of an amount.
   *
   * @param asked the recipe that was asked for, where one was
   * @param record the sample's record, where there is one
   */
  Outcome of(Optional<String> asked, Optional<ObjectNode> record, Amount amount) {
    Optional<String> name = name(asked, record);
    if (name.isEmpty()) {
      return new Outcome(Optional.empty(), List.of());
    }
    Optional<Recipe> recipe = recipes.find(name.get());
    if (recipe.isEmpty()) {
      return new Outcome(Optional.empty(), List.of(recipes.unknown(name.get()).code()));
    }
    Prepared prepared =
        Prepared.of(recipe.get(), amount, milligramsPerLitre(), moisturePercent(record));
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

  private Optional<Reason> trouble(String name) {
    return recipes.find(name).isPresent() ? Optional.empty() : Optional.of(recipes.unknown(name));
  }

  private static OptionalDouble moisturePercent(Optional<ObjectNode> sample) {
    return field(sample, MOISTURE)
        .map(given -> OptionalDouble.of(given.doubleValue()))
        .orElseGet(OptionalDouble::empty);
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

  /**
   * A result reckoned back anew.
   *
   * @param asked the recipe that was asked for, where one was
   * @param record the sample's record, where there is one
   * @param amount what stands in the vessel
   */
  Result anew(Result result, Optional<String> asked, Optional<ObjectNode> record, Amount amount) {
    Outcome outcome = of(asked, record, amount);
    List<String> flags = new ArrayList<>(result.flags());
    flags.removeIf(FLAGS::contains);
    flags.addAll(outcome.flags());
    return result
        .change()
        .flags(flags)
        .reported(
            outcome
                .prepared()
                .map(Prepared::reported)
                .orElseGet(() -> ResultMaker.reported(amount)),
            outcome.prepared().map(Prepared::preparation))
        .done();
  }

  /** How many mg/L one of the results' unit is, on their basis. */
  private double milligramsPerLitre() {
    Scale.OfConcentration in = (Scale.OfConcentration) scale;
    return in.in() == ConcentrationUnit.MILLIGRAMS_PER_LITRE
        ? 1
        : 1e3 * in.molesPerLitre(1) * in.analyte().gramsPerMole(in.counted());
  }
}
