package org.restpoint.acquisition.schema;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

class MutantsTest {

  private static final List<JsonNode> SAID = Scenes.all();

  @Test
  void aFieldMoreIsRefusedEverywhere() {
    assertRefused(Mutants::withAnExtraField);
  }

  @Test
  void aFieldLessIsRefusedEverywhere() {
    assertRefused(Mutants::withoutAField);
  }

  @Test
  void aWrongTypeIsRefusedEverywhere() {
    assertRefused(Mutants::withAWrongType);
  }

  @Test
  void anUnsettledResultMayNotCarryANumber() {
    ObjectNode settled = first("result", "outcome", "settled");
    for (String field : List.of("concentration", "reported", "calibration", "millivolts")) {
      assertWrong(
          first("result", "outcome", "unsettled"), result -> result.set(field, settled.get(field)));
    }
  }

  @Test
  void aSettledResultMustCarryItsNumberAndWhatItRestsOn() {
    for (String field :
        List.of(
            "concentration",
            "reported",
            "calibration",
            "millivolts",
            "millivoltsUncertainty",
            "celsius")) {
      assertWrong(first("result", "outcome", "settled"), result -> result.remove(field));
    }
  }

  @Test
  void aPassMayNotCarryAFlagNorASuspectResultNone() {
    assertWrong(first("result", "quality", "1"), result -> result.withArray("flags").add("old"));
    assertWrong(first("result", "quality", "3"), result -> result.putArray("flags"));
  }

  @Test
  void aForecastIsOfAPotential() {
    assertWrong(
        first("result", "forecast", "true"),
        result -> result.remove(List.of("millivolts", "millivoltsUncertainty")));
    for (String outcome : List.of("unsettled", "refused")) {
      ObjectNode none =
          (ObjectNode)
              SAID.stream()
                  .filter(object -> object.path("outcome").asText().equals(outcome))
                  .filter(object -> !object.has("millivolts"))
                  .findFirst()
                  .orElseThrow()
                  .deepCopy();
      assertWrong(none, result -> result.put("forecast", true));
    }
  }

  @Test
  void progressHasAForecastAndItsUncertaintyOrNeither() {
    List<String> fields = List.of("forecastMillivolts", "forecastUncertaintyMillivolts");
    List<JsonNode> foreseen =
        SAID.stream()
            .filter(object -> !object.findParents(fields.get(0)).isEmpty())
            .filter(object -> Schemas.payload(object).equals("settling"))
            .toList();
    assertThat(foreseen).anyMatch(object -> object.has(fields.get(0)));
    assertThat(foreseen).anyMatch(object -> object.has("members"));
    for (JsonNode progress : foreseen) {
      for (String field : fields) {
        assertWrong(
            progress.deepCopy(),
            copy -> ((ObjectNode) copy.findParents(field).get(0)).remove(field));
      }
      assertWrong(
          progress.deepCopy(),
          copy -> ((ObjectNode) copy.findParents(fields.get(1)).get(0)).put(fields.get(1), -0.1));
    }
  }

  @Test
  void aRefusalGivesAReason() {
    assertWrong(first("result", "outcome", "refused"), result -> result.putArray("reasons"));
    assertWrong(first("calibration", "verdict", "refused"), one -> one.putArray("reasons"));
    assertWrong(first("answer", "verdict", "refused"), answer -> answer.putArray("reasons"));
  }

  @Test
  void anAcceptedCalibrationHasItsLine() {
    for (String field :
        List.of(
            "slopeMillivoltsPerDecade",
            "slopePercent",
            "offsetMillivolts",
            "slopeStandardError",
            "referenceCelsius")) {
      assertWrong(first("calibration", "verdict", "accepted"), one -> one.remove(field));
    }
  }

  @Test
  void anAnswerTellsTheOutcomeOnceItIsDoneAndNotBefore() {
    List<JsonNode> done =
        SAID.stream()
            .filter(
                answer -> answer.has("outcome") && answer.path("verdict").asText().equals("done"))
            .toList();
    assertThat(done).isNotEmpty();
    for (JsonNode answer : done) {
      assertWrong(answer.deepCopy(), one -> one.remove("outcome"));
      assertWrong(answer.deepCopy(), one -> one.put("verdict", "accepted"));
    }
  }

  @Test
  void aTimeIsInUtcAndACodeIsInLowerCase() {
    assertWrong(first("notice", "event", "notice"), one -> one.put("time", "2026-04-02 14:00"));
    assertWrong(
        first("notice", "event", "notice"), one -> one.put("time", "2026-04-02T14:00:00+02:00"));
    assertWrong(first("notice", "event", "notice"), one -> one.put("code", "Standard unknown"));
  }

  private static void assertRefused(Function<JsonNode, List<Mutants.Mutant>> mutation) {
    int tried = 0;
    for (JsonNode object : oneOfEachShape()) {
      for (Mutants.Mutant mutant : mutation.apply(object)) {
        tried++;
        assertThat(Schemas.problems(Schemas.payload(object), mutant.object()))
            .as("%s of %s", mutant.wrong(), object)
            .isNotEmpty();
      }
    }
    assertThat(tried).isGreaterThan(oneOfEachShape().size());
  }

  /** Of objects with the same payload and the same fields, in them and inside them, the first. */
  private static Collection<JsonNode> oneOfEachShape() {
    Map<String, JsonNode> shapes = new LinkedHashMap<>();
    SAID.forEach(
        object -> shapes.putIfAbsent(Schemas.payload(object) + Mutants.fields(object), object));
    return shapes.values();
  }

  private static void assertWrong(ObjectNode object, Consumer<ObjectNode> mutation) {
    String payload = Schemas.payload(object);
    assertThat(Schemas.problems(payload, object)).isEmpty();
    mutation.accept(object);
    assertThat(Schemas.problems(payload, object)).as("%s", object).isNotEmpty();
  }

  private static ObjectNode first(String payload, String field, String value) {
    return SAID.stream()
        .filter(object -> Schemas.payload(object).equals(payload))
        .filter(object -> object.path(field).asText().equals(value))
        .map(object -> (ObjectNode) object.deepCopy())
        .findFirst()
        .orElseThrow();
  }
}
