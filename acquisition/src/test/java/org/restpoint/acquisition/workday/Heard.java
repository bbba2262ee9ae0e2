package org.restpoint.acquisition.workday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.restpoint.acquisition.event.EventJson;

/** What the service said in the course of the day, in the order in which it was said. */
final class Heard {

  private static final List<String> KEPT = List.of("result", "calibration", "notice");
  private static final int ACCEPTED = 64;

  private final Map<String, JsonNode> events = new LinkedHashMap<>();

  static JsonNode parse(String json) {
    try {
      return EventJson.mapper().readTree(json);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Takes an event; the same again, and what is no event to keep, changes nothing. */
  void take(JsonNode event) {
    if (KEPT.contains(event.path("event").asText())) {
      events.putIfAbsent(event.get("id").asText() + "/" + event.path("revision").asInt(), event);
    }
  }

  /** Results and calibrations: what a replay has to give as well, to the last bit. */
  List<JsonNode> measured() {
    return events.values().stream()
        .filter(event -> !event.get("event").asText().equals("notice"))
        .toList();
  }

  /** Those before a time. */
  List<JsonNode> measuredBefore(Instant end) {
    return measured().stream()
        .filter(event -> Instant.parse(event.get("time").asText()).isBefore(end))
        .toList();
  }

  private List<JsonNode> samples() {
    return events.values().stream()
        .filter(event -> event.get("event").asText().equals("result"))
        .filter(result -> !result.has("verification"))
        .toList();
  }

  /** Holds every sample against its row of the table worked out by hand. */
  void assertSamples() {
    List<SampleRow> rows = SampleRow.all();
    List<JsonNode> results = samples();
    List<String> found = new ArrayList<>();
    for (int i = 0; i < results.size(); i++) {
      found.add(rows.get(Math.min(i, rows.size() - 1)).found(results.get(i)));
    }
    assertThat(found).containsExactlyElementsOf(rows.stream().map(SampleRow::expected).toList());
    for (int i = 0; i < rows.size(); i++) {
      if (rows.get(i).isSound()) {
        JsonNode reported = results.get(i).get("reported");
        assertThat(Math.abs(reported.get("value").asDouble() - rows.get(i).really()))
            .as(rows.get(i).expected())
            .isLessThan(reported.get("uncertainty").asDouble());
      }
    }
  }

  /**
   * Holds what else happened against its table.
   *
   * @param untold notices that are not told here
   */
  void assertEvents(Collection<String> untold) {
    List<Table.Row> rows =
        Table.rows("events.csv").stream()
            .filter(row -> !untold.contains(row.cell("what")))
            .toList();
    List<JsonNode> told =
        events.values().stream().filter(event -> !words(event).isEmpty()).toList();
    assertThat(told.stream().map(Heard::words).toList())
        .containsExactlyElementsOf(
            rows.stream()
                .map(
                    row ->
                        "%s %s %s".formatted(row.cell("event"), row.cell("what"), row.cell("why")))
                .toList());
    for (int i = 0; i < rows.size(); i++) {
      Instant given = Workday.time(rows.get(i).cell("time"));
      int within = rows.get(i).cell("event").equals("notice") ? 0 : 60;
      assertThat(Instant.parse(told.get(i).get("time").asText()))
          .as(rows.get(i).toString())
          .isBetween(given, given.plusSeconds(within));
    }
    assertThat(
            measured().stream()
                .filter(event -> event.path("verdict").asText().equals("accepted"))
                .count())
        .isEqualTo(ACCEPTED);
  }

  private static String words(JsonNode event) {
    String why = "";
    String what = "";
    if (event.get("event").asText().equals("notice")) {
      what = event.get("code").asText();
    } else if (event.has("verification")) {
      what = event.at("/verification/role").asText();
      why = event.at("/verification/verdict").asText();
    } else if (event.path("verdict").asText().equals("refused")) {
      what = "refused";
      why = event.at("/reasons/0/code").asText() + " " + event.at("/causes/0/cause").asText();
    } else {
      return "";
    }
    String kind = event.has("verification") ? "check" : event.get("event").asText();
    return "%s %s %s".formatted(kind, what, why);
  }
}
