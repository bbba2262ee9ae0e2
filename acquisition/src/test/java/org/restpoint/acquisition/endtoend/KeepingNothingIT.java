package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.service.Bytes;
import org.restpoint.adapters.broker.Mosquitto;
import org.restpoint.adapters.mqtt.Subscriber;
import org.restpoint.adapters.mqtt.Subscriber.Heard;
import org.restpoint.adapters.serial.PseudoTerminal;

/**
 * A session at a bench with a sample that is kept, one that is private and one that is forgotten
 * afterwards: where each of them is then, with somebody listening to everything.
 */
@EnabledOnOs(OS.LINUX)
@Timeout(300)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class KeepingNothingIT {

  private static final String KEPT = "W-1";

  /** Invented, and like nothing else that is said. */
  private static final String PRIVATE = "hush-17";

  private static final String FORGOTTEN = "gone-23";
  private static final String GROWER = "Ottilie Quandt";

  private static final double CELSIUS = 25.0;

  private final List<Heard> heard = new ArrayList<>();
  private JsonNode confided = Ran.parse("{}");
  private JsonNode forgotten = Ran.parse("{}");
  private JsonNode once = Ran.parse("{}");
  private List<String> log = List.of();
  private String output = "";
  private Path commands = Path.of("");
  private Path service = Path.of("");
  private Path station = Path.of("");

  @BeforeAll
  void runTheSession(@TempDir Path folder) throws IOException {
    commands = Files.createDirectory(folder.resolve("commands"));
    service = Files.createDirectory(folder.resolve("service"));
    try (Mosquitto broker =
            Mosquitto.open(Files.createDirectory(folder.resolve("broker"))).start();
        Subscriber everybody = Subscriber.connect(broker.url(), "everybody");
        Rig rig = Rig.connect(broker.url(), BenchStation.NAME);
        PseudoTerminal meter = new PseudoTerminal();
        ScriptedElectrode electrode = new ScriptedElectrode(BenchStation.LOW, CELSIUS)) {
      everybody.subscribe("#", 1);
      electrode.sendingTo(meter);
      station =
          BenchStation.write(
              service,
              Files.readString(
                      BenchStation.write(service, broker.url(), BenchStation.serial(meter.path())))
                  .replace("    link:", "    raw: true\n    link:"));
      try (RunningService running = RunningService.ready(station)) {
        rig.awaitOnline(true);
        read(rig, "{'id':'1','do':'calibrate','standard':'low'}", electrode, BenchStation.LOW);
        read(rig, "{'id':'2','do':'calibrate','standard':'high'}", electrode, BenchStation.HIGH);
        read(rig, "{'id':'3','do':'measure','sample':'%s'}".formatted(KEPT), electrode, 20);
        confided =
            read(
                rig,
                "{'id':'4','do':'measure','private':true,'sample':{'number':'%s','grower':'%s'}}"
                    .formatted(PRIVATE, GROWER),
                electrode,
                31.7);
        electrode.moveTo(BenchStation.HIGH, CELSIUS);
        read(rig, "{'id':'5','do':'calibrate','standard':'high'}", electrode, BenchStation.HIGH);
        once =
            read(
                rig,
                "{'id':'6','do':'measure','sample':{'number':'%s','grower':'%s'}}"
                    .formatted(FORGOTTEN, GROWER),
                electrode,
                44.4);
        electrode.moveTo(BenchStation.LOW, CELSIUS);
        read(rig, "{'id':'7','do':'calibrate','standard':'low'}", electrode, BenchStation.LOW);
        forgotten = Ran.parse(tell("forget", "sample=" + FORGOTTEN).out().lines().toList().get(1));
        running.terminate();
        output = running.output();
        log = running.log();
      }
      hearTheRest(everybody);
    }
  }

  /**
   * Puts the electrode into a solution once the instruction is taken, and waits for its end. Out of
   * a sample of which nothing is kept it has to be lifted before.
   */
  private static JsonNode read(
      Rig rig, String instruction, ScriptedElectrode electrode, double milligramsPerLitre) {
    String json = instruction.replace('\'', '"');
    String id = Ran.parse(json).get("id").asText();
    rig.tell(BenchStation.PROBE, json);
    rig.answer(BenchStation.PROBE, id, "accepted");
    electrode.moveTo(milligramsPerLitre, CELSIUS);
    return rig.answer(BenchStation.PROBE, id, "done");
  }

  private Ran tell(String... instruction) {
    List<Object> arguments = new ArrayList<>(List.of("tell", station, BenchStation.PROBE));
    arguments.addAll(List.of(instruction));
    arguments.add("--wait");
    return Ran.restpoint(commands, arguments.toArray()).well();
  }

  private void hearTheRest(Subscriber everybody) {
    Heard next = everybody.next();
    while (!next.topic().endsWith("/online") || !next.payload().equals("false")) {
      heard.add(next);
      next = everybody.next();
    }
  }

  private List<String> topicsWith(String text) {
    return heard.stream()
        .filter(message -> message.payload().contains(text))
        .map(message -> message.topic().replaceFirst(".*/", ""))
        .toList();
  }

  private String records(Object... options) {
    List<Object> arguments = new ArrayList<>(List.of("records", station));
    arguments.addAll(List.of(options));
    return Ran.restpoint(commands, arguments.toArray()).well().out();
  }

  private static double millivolts(JsonNode answer) {
    return answer.at("/outcome/millivolts").asDouble();
  }

  @Test
  void aPrivateSampleIsHeardInItsInstructionAndItsAnswerAlone() {
    assertThat(confided.at("/outcome/sample/grower").asText()).isEqualTo(GROWER);
    assertThat(topicsWith(PRIVATE)).containsExactly("instruction", "answer");
    assertThat(topicsWith(confided.at("/outcome/id").asText())).containsExactly("answer");
    assertThat(heard)
        .filteredOn(message -> message.topic().endsWith("/raw"))
        .hasSizeGreaterThan(20)
        .noneMatch(
            message ->
                Ran.parse(message.payload()).get("millivolts").asDouble() == millivolts(confided));
  }

  @Test
  void neitherIsInWhatTheServiceSaidOrWroteAfterwards() throws IOException {
    String station = Files.readString(this.station);
    for (String text :
        List.of(
            PRIVATE,
            FORGOTTEN,
            GROWER,
            confided.at("/outcome/id").asText(),
            once.at("/outcome/id").asText())) {
      assertThat(Bytes.with(service, text)).as(text).isEmpty();
      assertThat(log).as(text).noneMatch(line -> line.contains(text));
      assertThat(output).doesNotContain(text);
      assertThat(station).doesNotContain(text);
    }
    assertThat(Bytes.with(service, millivolts(confided))).isEmpty();
    assertThat(Bytes.with(service, millivolts(once))).isEmpty();
    assertThat(Bytes.with(service, KEPT)).as("what may be kept is").isNotEmpty();
    assertThat(forgotten.at("/outcome/clean").asBoolean()).isTrue();
    assertThat(forgotten.at("/outcome/results").asInt()).isEqualTo(1);
  }

  @Test
  void theRecordsKnowTheSampleThatIsKeptAndNoOther() {
    assertThat(records("--as", "jsonl").lines().map(Ran::parse))
        .extracting(result -> result.at("/sample/number").asText())
        .containsExactly(KEPT);
    assertThat(records("--of", "samples")).doesNotContain(GROWER);
    assertThat(records("--of", "instructions"))
        .contains("\"forget\"")
        .doesNotContain(PRIVATE)
        .doesNotContain(FORGOTTEN);
    assertThat(records("--of", "summary")).contains("results    1 settled");
  }

  @Test
  void aSlipIsMadeOfTheCallersAnswerAndOfNoJournal() throws IOException {
    Path answer = Files.writeString(commands.resolve("answer.jsonl"), confided + "\n");
    assertThat(Ran.restpoint(commands, "slip", station, "--from", answer).well().out())
        .contains("Sample  " + PRIVATE)
        .contains("Grower  " + GROWER)
        .contains("mg/L nitrate-N");
    Ran kept = Ran.restpoint(commands, "slip", station, confided.at("/outcome/id").asText());
    assertThat(kept.exitStatus()).isNotZero();
    assertThat(kept.err()).contains(confided.at("/outcome/id").asText());
  }
}
