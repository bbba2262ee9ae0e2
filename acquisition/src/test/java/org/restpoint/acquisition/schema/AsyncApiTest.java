package org.restpoint.acquisition.schema;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.acquisition.event.EventJson;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

class AsyncApiTest {

  private static final String FILE = "asyncapi.yaml";
  private static final JsonNode DOCUMENT = load();

  private static JsonNode load() {
    LoadSettings strict = LoadSettings.builder().setAllowDuplicateKeys(false).build();
    Object yaml = new Load(strict).loadFromString(Schemas.text(FILE));
    return EventJson.mapper().valueToTree(yaml);
  }

  @ParameterizedTest
  @CsvSource({
    "online,      restpoint/{station}/online,              send,    1, true",
    "raw,         restpoint/{station}/{probe}/raw,         send,    0, false",
    "settling,    restpoint/{station}/{probe}/settling,    send,    0, false",
    "result,      restpoint/{station}/{probe}/result,      send,    1, false",
    "calibration, restpoint/{station}/{probe}/calibration, send,    1, true",
    "state,       restpoint/{station}/{probe}/state,       send,    1, true",
    "notice,      restpoint/{station}/{probe}/notice,      send,    1, false",
    "batch,       restpoint/{station}/{probe}/batch,       send,    1, false",
    "instruction, restpoint/{station}/{probe}/instruction, receive, 1, false",
    "answer,      restpoint/{station}/{probe}/answer,      send,    1, false"
  })
  void aTopicHasItsChannelItsQualityOfServiceAndItsSchema(
      String channel, String address, String action, int qos, boolean retained) {
    assertThat(DOCUMENT.at("/channels/" + channel + "/address").asText()).isEqualTo(address);
    List<JsonNode> operations = new ArrayList<>();
    DOCUMENT
        .path("operations")
        .forEach(
            operation -> {
              if (operation.at("/channel/$ref").asText().equals("#/channels/" + channel)) {
                operations.add(operation);
              }
            });
    assertThat(operations).hasSize(1);
    JsonNode operation = operations.get(0);
    assertThat(operation.path("action").asText()).isEqualTo(action);
    assertThat(operation.at("/bindings/mqtt/qos").intValue()).isEqualTo(qos);
    assertThat(operation.at("/bindings/mqtt/retain").isBoolean()).isTrue();
    assertThat(operation.at("/bindings/mqtt/retain").booleanValue()).isEqualTo(retained);
    JsonNode message = target(operation.at("/messages/0/$ref").asText());
    String payload = target(message.path("$ref").asText()).at("/payload/schema/$ref").asText();
    assertThat(payload).isEqualTo("./" + channel + ".json");
  }

  @Test
  void thereIsNoOtherChannelAndNoOtherOperation() {
    List<String> channels = new ArrayList<>();
    DOCUMENT.path("channels").fieldNames().forEachRemaining(channels::add);
    assertThat(channels).containsExactlyElementsOf(Schemas.PAYLOADS);
    assertThat(DOCUMENT.path("operations")).hasSize(channels.size());
    assertThat(DOCUMENT.path("asyncapi").asText()).isEqualTo("3.0.0");
  }

  @Test
  void theWillIsTheOnlineTopicsOwn() {
    JsonNode will = DOCUMENT.at("/servers/broker/bindings/mqtt/lastWill");
    assertThat(will.path("topic").asText())
        .isEqualTo(DOCUMENT.at("/channels/online/address").asText());
    assertThat(will.path("qos").intValue()).isEqualTo(1);
    assertThat(will.path("retain").booleanValue()).isTrue();
    assertThat(Schemas.problems("online", will.path("message").asText())).isEmpty();
  }

  @Test
  void anInstructionIsAnsweredOnTheAnswerChannel() {
    assertThat(DOCUMENT.at("/operations/receiveInstruction/reply/channel/$ref").asText())
        .isEqualTo("#/channels/answer");
  }

  @Test
  void everyParameterOfAnAddressIsDescribed() {
    DOCUMENT
        .path("channels")
        .forEach(
            channel -> {
              List<String> described = new ArrayList<>();
              channel.path("parameters").fieldNames().forEachRemaining(described::add);
              List<String> named =
                  channel.path("address").asText().contains("{probe}")
                      ? List.of("station", "probe")
                      : List.of("station");
              assertThat(described).isEqualTo(named);
            });
  }

  @Test
  void everyReferenceLeadsSomewhere() {
    List<String> references = references(DOCUMENT);
    assertThat(references).hasSizeGreaterThan(40);
    references.forEach(
        reference -> assertThat(target(reference).isMissingNode()).as(reference).isFalse());
    for (String payload : Schemas.PAYLOADS) {
      JsonNode schema = Schemas.schema(payload + ".json");
      for (String reference : references(schema)) {
        JsonNode target =
            reference.startsWith("#") ? schema.at(reference.substring(1)) : target(reference);
        assertThat(target.isMissingNode()).as("%s in %s", reference, payload).isFalse();
      }
    }
  }

  private static List<String> references(JsonNode node) {
    List<String> found = new ArrayList<>();
    node.properties()
        .forEach(
            field -> {
              if (field.getKey().equals("$ref")) {
                found.add(field.getValue().asText());
              }
            });
    node.forEach(child -> found.addAll(references(child)));
    return found;
  }

  /** What a reference of the document leads to; a missing node where it leads nowhere. */
  private static JsonNode target(String reference) {
    String[] parts = reference.split("#", 2);
    JsonNode file =
        parts[0].isEmpty() ? DOCUMENT : Schemas.schema(parts[0].replaceFirst("^\\./", ""));
    return parts.length == 1 ? file : file.at(parts[1]);
  }
}
