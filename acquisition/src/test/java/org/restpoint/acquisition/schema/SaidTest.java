package org.restpoint.acquisition.schema;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class SaidTest {

  private static final List<JsonNode> SAID = Scenes.all();

  @Test
  void everythingThatIsSaidMeetsItsSchema() {
    for (JsonNode object : SAID) {
      assertThat(Schemas.problems(Schemas.payload(object), object)).as("%s", object).isEmpty();
    }
  }

  @Test
  void theScenesSayEveryKindOfThing() {
    Set<String> kinds = new TreeSet<>();
    SAID.forEach(object -> kinds.add(Schemas.payload(object)));
    assertThat(kinds)
        .containsExactlyInAnyOrder(
            "raw",
            "settling",
            "result",
            "calibration",
            "state",
            "notice",
            "answer",
            "sample",
            "batch");
  }

  @Test
  void theScenesEndInEveryWayAReadingCanEnd() {
    assertThat(SAID)
        .extracting(object -> object.path("outcome").asText("") + object.path("verdict").asText(""))
        .contains("settled", "unsettled", "refused", "accepted", "done");
    assertThat(SAID)
        .filteredOn(object -> object.has("quality"))
        .extracting(object -> object.path("quality").intValue())
        .contains(1, 3, 4, 9);
  }

  @Test
  void theScenesPassThroughEveryStateOfTheSchema() {
    Set<String> states = new TreeSet<>();
    SAID.stream()
        .filter(object -> object.has("state"))
        .forEach(object -> states.add(object.path("state").asText()));
    Set<String> listed = new TreeSet<>();
    Schemas.schema("state.json")
        .at("/properties/state/enum")
        .forEach(state -> listed.add(state.asText()));
    assertThat(states).isEqualTo(listed);
  }

  @Test
  void theEventComesFirst() {
    assertThat(SAID)
        .filteredOn(object -> object.has("event"))
        .allSatisfy(object -> assertThat(object.fieldNames().next()).isEqualTo("event"));
  }

  @Test
  void onlineIsABareTrueOrFalse() {
    assertThat(Schemas.problems("online", BooleanNode.TRUE)).isEmpty();
    assertThat(Schemas.problems("online", BooleanNode.FALSE)).isEmpty();
    assertThat(Schemas.problems("online", TextNode.valueOf("true"))).isNotEmpty();
    assertThat(Schemas.problems("online", "1")).isNotEmpty();
  }
}
