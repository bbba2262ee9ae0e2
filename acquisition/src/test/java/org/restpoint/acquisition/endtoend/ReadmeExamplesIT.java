package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.serial.PseudoTerminal;

/**
 * The examples of the README at the top, taken from its text and run as they stand. Three things
 * alone are put in their place: the serial port, which is a pseudo-terminal here, and the ports of
 * the embedded broker and of the metrics, which are free ones, so that tests share none.
 */
@EnabledOnOs(OS.LINUX)
@Timeout(300)
class ReadmeExamplesIT {

  private static final Page README = Page.of("README.md");

  /** Invented: a tile drain in spring, mg/L as N, at the temperature of the bench. */
  private static final double SAMPLE = 12.7;

  private static final double CELSIUS = 22.5;

  @TempDir private Path folder;

  private Path station(String name, String... replacements) throws IOException {
    String text = README.example(name);
    for (int i = 0; i < replacements.length; i += 2) {
      assertThat(text).contains(replacements[i]);
      text = text.replace(replacements[i], replacements[i + 1]);
    }
    return Files.writeString(folder.resolve(name), text);
  }

  /** A line of the README as it is typed; it has no quotes, so blanks part its words. */
  private Ran typed(String line) {
    assertThat(README.text().lines()).contains(line.strip());
    List<String> words = new ArrayList<>(Arrays.asList(line.strip().split(" +", -1)));
    assertThat(words.remove(0)).isEqualTo("restpoint");
    return Ran.restpoint(folder, words.toArray());
  }

  @Test
  void theFirstCommandRunsTheJarThatTheBuildMakes() throws IOException {
    String first = README.blocks("sh").get(0);
    String path = first.replaceAll("(?s).*java -jar (\\S+) demo.*", "$1");
    assertThat(Files.isSameFile(Page.TOP.resolve(path), Jar.file())).isTrue();
  }

  @Test
  void theIntegratorCalibratesAndMeasuresOverASerialLine() throws IOException {
    List<String> atTheBench = README.example("at the bench").lines().toList();
    assertThat(atTheBench).hasSize(3);
    try (PseudoTerminal meter = new PseudoTerminal();
        ScriptedElectrode electrode = new ScriptedElectrode(BenchStation.LOW, CELSIUS)) {
      electrode.sendingTo(meter);
      Path bench =
          station(
              "bench.yaml",
              "/dev/ttyUSB0",
              meter.path().toString(),
              "broker: embedded",
              "broker: { embedded: { port: 0 } }");
      assertThat(typed("restpoint check bench.yaml").well().out())
          .contains("nitrate as-N in mg/L, temperature from the reading");
      try (RunningService service = RunningService.ready(bench)) {
        typed(atTheBench.get(0)).well();
        electrode.moveTo(BenchStation.HIGH, CELSIUS);
        typed(atTheBench.get(1)).well();
        electrode.moveTo(SAMPLE, CELSIUS);
        JsonNode result = Ran.parse(typed(atTheBench.get(2)).well().out().lines().toList().get(1));
        assertThat(result.at("/outcome/concentration/value").asDouble())
            .as("the potential is foretold within 1 mV")
            .isCloseTo(SAMPLE, within(SAMPLE * NitrateElectrode.rounding(1, CELSIUS)));
        assertThat(result.at("/outcome/forecast").asBoolean()).isTrue();
        assertThat(result.at("/outcome/responseReadings").asInt()).isEqualTo(2);
        assertThat(Ran.restpoint(folder, "records", "bench.yaml").well().out())
            .contains(result.at("/outcome/id").asText(), "W-17");
        assertThatARigIsAnsweredAsShown(service, electrode);
      }
    }
  }

  /** The exchange of the third section, with the station of the first. */
  private static void assertThatARigIsAnsweredAsShown(
      RunningService service, ScriptedElectrode electrode) {
    List<String> exchange = README.example("a rig").lines().toList();
    String instruction = exchange.get(0).substring(exchange.get(0).indexOf('{'));
    assertThat(exchange.get(0)).startsWith("restpoint/willow-bench/no3-a/instruction ");
    electrode.moveTo(BenchStation.LOW, CELSIUS);
    try (Rig rig = Rig.connect(service.broker(), BenchStation.NAME).awaitOnline(true)) {
      rig.tell(BenchStation.PROBE, instruction);
      rig.answer(BenchStation.PROBE, "41", "accepted");
      JsonNode done = rig.answer(BenchStation.PROBE, "41", "done");
      assertThat(done.at("/outcome/event").asText()).isEqualTo("calibration");
      assertThat(done.at("/outcome/verdict").asText()).isEqualTo("accepted");
    }
  }

  /**
   * Standards of 1 and 10 mg/L at 12 °C, means of the five readings 285.0 and 230.06 mV: the slope
   * is −54.94 mV a decade there. The sample's mean is 247.88 mV at 11.5 °C. With N 14.007 g/mol the
   * weak standard is 7.1393e-5 mol/L, log −4.146345; E0 = 285.0 − 54.94 · 4.146345 = 57.1998 mV; x
   * = (247.88 − 57.1998)/−54.94 = −3.470699; at 11.5 °C log c = x · 285.15/284.65 = −3.476795, so c
   * = 3.3358e-4 mol/L, which is 4.6725 mg/L.
   */
  @Test
  void theResearcherReplaysWhatWasLogged() throws IOException {
    station("creek.yaml");
    Files.writeString(folder.resolve("creek.csv"), README.example("creek.csv"));
    Files.writeString(folder.resolve("creek.jsonl"), README.example("creek.jsonl"));
    List<JsonNode> results =
        typed(README.example("replay"))
            .well()
            .out()
            .lines()
            .map(Ran::parse)
            .filter(event -> event.get("event").asText().equals("result"))
            .toList();
    assertThat(results)
        .extracting(result -> result.get("time").asText(), result -> result.get("quality").asInt())
        .containsExactly(tuple("2026-04-02T14:00:00Z", 9), tuple("2026-04-02T14:15:50Z", 1));
    assertThat(results.get(0).get("flags").toString()).isEqualTo("[\"in-maintenance\"]");
    assertThat(results.get(0).has("concentration")).isFalse();
    assertThat(results.get(1).at("/concentration/value").asDouble())
        .as("worked out by hand to five digits")
        .isCloseTo(4.6725, within(5e-5));
  }

  @Test
  void theResearchersProbeIsReadByItsPointers() throws IOException, InterruptedException {
    Path creek =
        station(
            "creek.yaml",
            "broker: embedded",
            "broker: { embedded: { port: 0 } }",
            "http: 127.0.0.1:9464",
            "http: 127.0.0.1:0");
    try (RunningService service = RunningService.ready(creek);
        Rig logger = Rig.connect(service.broker(), "creek").awaitOnline(true)) {
      Eventually.become(
          "a message is accepted",
          () -> {
            logger.send("creek/no3", "{\"mv\": 248.0, \"water\": {\"celsius\": 11.5}}");
            return Loopback.get(service.http().resolve("/metrics"))
                .body()
                .lines()
                .anyMatch(
                    line ->
                        line.matches(
                            "restpoint_link_accepted_total\\{probe=\"no3-creek\"} [1-9].*"));
          });
    }
  }
}
