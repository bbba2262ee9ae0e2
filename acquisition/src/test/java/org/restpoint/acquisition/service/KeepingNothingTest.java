package org.restpoint.acquisition.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.config.station.Station;

/** Nothing of a private or forgotten sample is in any byte that the service wrote. */
@Timeout(120)
class KeepingNothingTest {

  /** Invented, and like nothing else in the files. */
  private static final String NUMBER = "hush-17/b";

  private static final String GROWER = "Ottilie Quandt";
  private static final double SECRET = 187.654321;
  private static final double OPEN = 191.234567;
  private static final int LONG = 3000;
  private static final String RECORD =
      "{'number':'%s','grower':'%s','kind':'soil'}".formatted(NUMBER, GROWER);

  @TempDir private Path folder;
  private Station station;
  private Instant now = Instant.parse("2026-04-02T14:00:00Z");

  @BeforeEach
  void read() {
    station =
        Stations.brook(
            folder, Stations.SOON, "raw: true", "checks: { duplicate: { every: 5 samples } }");
  }

  private LiveEngine engine() {
    LiveEngine engine = new LiveEngine(folder, station, now);
    read(engine, "{'do':'calibrate','standard':'low'}", 230, 3);
    read(engine, "{'do':'calibrate','standard':'high'}", 155.5, 3);
    return engine;
  }

  /** Ten seconds from an instruction to the next. */
  private void read(LiveEngine engine, String instruction, double millivolts, int readings) {
    engine.at(now).begin("no3-a", instruction.replace('\'', '"'));
    for (int i = 1; i <= readings; i++) {
      engine.read("no3-a", now.plusMillis(i), millivolts);
    }
    now = now.plusSeconds(10);
  }

  private LiveEngine tell(LiveEngine engine, String instruction) {
    engine.at(now).tell("no3-a", instruction.replace('\'', '"'));
    now = now.plusSeconds(10);
    return engine;
  }

  private void assertNothing(List<String> alsoNot) {
    for (String text : List.of(NUMBER, GROWER, String.valueOf(SECRET))) {
      assertThat(Bytes.with(folder, text)).as(text).isEmpty();
    }
    alsoNot.forEach(text -> assertThat(Bytes.with(folder, text)).as(text).isEmpty());
    assertThat(Bytes.with(folder, SECRET)).isEmpty();
    assertThat(Bytes.with(folder, OPEN)).as("what may be kept is").isNotEmpty();
  }

  @Test
  void aPrivateSampleIsInTheCallersAnswerAlone() {
    try (LiveEngine engine = engine()) {
      read(engine, "{'do':'measure','sample':'S-18'}", OPEN, 3);
      tell(engine, "{'do':'measure','private':true,'sample':['%s']}".formatted(NUMBER));
      assertThat(engine.nextConfided().at("/reasons/0/code").asText())
          .isEqualTo("instruction-unreadable");
      read(
          engine,
          "{'id':'7','do':'measure','private':true,'sample':%s}".formatted(RECORD),
          SECRET,
          10);
      JsonNode answer = engine.nextConfided();
      assertThat(answer.at("/outcome/sample/grower").asText()).isEqualTo(GROWER);
      assertThat(answer.at("/outcome/millivolts").asDouble()).isEqualTo(SECRET);
      tell(engine, "{'do':'rinsed'}");
      read(engine, "{'do':'calibrate','standard':'low'}", 230, 3);
      read(engine, "{'do':'measure','sample':'S-19'}", OPEN, 3);
      engine.end();
      assertThat(engine.sent("/result"))
          .extracting(result -> result.at("/sample/number").asText())
          .containsExactly("S-18", "S-19");
      assertThat(engine.passed())
          .filteredOn(payload -> payload.contains(NUMBER) || payload.contains("" + SECRET))
          .hasSize(2)
          .allMatch(payload -> payload.contains("\"verdict\""));
      assertNothing(
          List.of(
              answer.at("/outcome/concentration/value").asText(),
              answer.at("/outcome/id").asText()));
      assertThat(engine.replayed())
          .as("a replay goes on behind it as the service did")
          .filteredOn(event -> event.get("event").asText().equals("result"))
          .isEqualTo(engine.sent("/result"));
    }
  }

  @Test
  void whatIsForgottenLeavesTheJournalAndNothingElseDoes() {
    String id;
    try (LiveEngine engine = engine()) {
      read(engine, "{'do':'measure','sample':'S-18'}", OPEN, 3);
      tell(engine, "{'do':'sample','sample':%s}".formatted(RECORD));
      read(engine, "{'do':'measure','sample':'%s'}".formatted(NUMBER), SECRET, LONG);
      tell(engine, "{'do':'sample','sample':{'number':'%s','kind':''}}".formatted(NUMBER));
      read(
          engine,
          "{'do':'verify','role':'duplicate','sample':'%s'}".formatted(NUMBER),
          SECRET - 40,
          LONG);
      tell(engine, "{'do':'rinsed'}");
      read(engine, "{'do':'measure','sample':'S-19'}", OPEN, 3);
      tell(
          engine,
          "{'do':'batch','cups':[{'cup':'1','sample':'S-20'},{'cup':'2','sample':'%s'}]}"
              .formatted(NUMBER));
      engine.end();
      List<JsonNode> results = engine.sent("/result");
      id = results.get(1).at("/id").asText();
      assertThat(results.get(1).at("/sample/number").asText()).isEqualTo(NUMBER);
      assertThat(results)
          .as("the duplicate failed, so what stands before it is doubted")
          .anyMatch(
              result ->
                  result.at("/sample/number").asText().equals("S-18")
                      && result.path("revision").asInt() == 2);
    }
    for (String text : List.of(NUMBER, GROWER, String.valueOf(SECRET), id)) {
      assertThat(Bytes.with(folder, text)).as(text).isNotEmpty();
    }
    assertThat(Bytes.with(folder, SECRET)).isNotEmpty();
    long before = Bytes.size(folder, "brook");
    try (LiveEngine engine = new LiveEngine(folder, station, now)) {
      tell(engine, "{'id':'f','do':'forget','sample':'%s'}".formatted(NUMBER));
      tell(engine, "{'id':'g','do':'forget','sample':'%s'}".formatted(NUMBER)).end();
      List<JsonNode> answers =
          engine.sent("/answer").stream()
              .filter(answer -> answer.at("/do").asText().equals("forget"))
              .toList();
      assertThat(answers)
          .extracting(answer -> answer.at("/verdict").asText())
          .containsExactly("accepted", "done", "refused");
      JsonNode outcome = answers.get(1).get("outcome");
      assertThat(outcome.get("text").asText())
          .isEqualTo(
              "2 results, %d raw readings and what stood in 5 instructions of the sample are taken"
                      .formatted(2 * LONG)
                  + " out for good");
      assertThat(outcome.get("clean").asBoolean()).isTrue();
      assertThat(answers.get(2).at("/reasons/0/code").asText()).isEqualTo("sample-unknown");
      assertNothing(List.of(id));
      assertThat(Bytes.size(folder, "brook")).isLessThan(before / 2);
    }
    try (LiveEngine engine = new LiveEngine(folder, station, now)) {
      tell(engine, "{'do':'done'}");
      read(engine, "{'do':'measure','sample':'S-21'}", OPEN, 3);
      engine.end();
      assertThat(
              engine.replayed().stream()
                  .filter(event -> event.get("event").asText().equals("result"))
                  .map(result -> result.at("/sample/number").asText()))
          .containsExactly("S-18", "S-19", "S-21");
      assertNothing(List.of(id));
    }
  }

  @Test
  void aCupOfAListWhoseReadingWasGivenUpIsForgottenWithItsReadings() {
    try (LiveEngine engine = engine()) {
      tell(
          engine,
          "{'do':'batch','cups':[{'cup':'1','sample':'%s'},{'cup':'2','sample':'S-18'}]}"
              .formatted(NUMBER));
      tell(engine, "{'do':'next'}");
      read(engine, "{'do':'in-place'}", SECRET, 2);
      tell(engine, "{'do':'cancel'}");
      tell(engine, "{'do':'next','skip':true}");
      read(engine, "{'do':'in-place'}", OPEN, 3);
      tell(engine, "{'do':'done'}").end();
    }
    assertThat(Bytes.with(folder, SECRET)).isNotEmpty();
    try (LiveEngine engine = new LiveEngine(folder, station, now)) {
      tell(engine, "{'do':'forget','sample':'%s'}".formatted(NUMBER)).end();
      assertNothing(List.of());
      assertThat(engine.replayed())
          .filteredOn(event -> event.get("event").asText().equals("result"))
          .extracting(result -> result.at("/sample/number").asText())
          .containsExactly("S-18");
    }
  }
}
