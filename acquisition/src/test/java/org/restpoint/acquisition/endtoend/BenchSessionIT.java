package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.broker.Mosquitto;
import org.restpoint.adapters.mqtt.Subscriber;
import org.restpoint.adapters.mqtt.Subscriber.Heard;
import org.restpoint.adapters.serial.PseudoTerminal;

/**
 * One session at a bench, from the serial line to the broker, the journal and a replay: an
 * electrode is calibrated on two standards, measures a sample and is checked.
 */
@EnabledOnOs(OS.LINUX)
@Timeout(300)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class BenchSessionIT {

  /** Invented: a tile drain in spring. */
  private static final double SAMPLE = 22.5;

  private static final double BENCH_CELSIUS = 25.0;
  private static final double SAMPLE_CELSIUS = 21.4;

  private final List<Heard> heard = new ArrayList<>();
  private final List<Heard> heardLate = new ArrayList<>();
  private Ran tooEarly = new Ran(-1, "", "");
  private Ran unknownStandard = new Ran(-1, "", "");
  private Ran calibrated = new Ran(-1, "", "");
  private Ran measured = new Ran(-1, "", "");
  private Ran verified = new Ran(-1, "", "");
  private Ran recordsMeanwhile = new Ran(-1, "", "");
  private int exitStatus = -1;
  private String output = "";
  private Path folder = Path.of("");
  private Path station = Path.of("");

  @BeforeAll
  void runTheSession(@TempDir Path temporary) {
    folder = temporary;
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Subscriber farm = Subscriber.connect(broker.url(), "farm");
        PseudoTerminal meter = new PseudoTerminal();
        ScriptedElectrode electrode = new ScriptedElectrode(BenchStation.LOW, BENCH_CELSIUS)) {
      farm.subscribe("restpoint/#", 1);
      electrode.sendingTo(meter);
      station = BenchStation.write(folder, broker.url(), BenchStation.serial(meter.path()));
      try (RunningService service = RunningService.ready(station)) {
        tooEarly = tell("measure");
        unknownStandard = tell("calibrate", "standard=mid");
        tell("calibrate", "standard=low", "--wait").well();
        electrode.moveTo(BenchStation.HIGH, BENCH_CELSIUS);
        calibrated = tell("calibrate", "standard=high", "--wait");
        electrode.moveTo(SAMPLE, SAMPLE_CELSIUS);
        measured = tell("measure", "sample=S-17", "--wait");
        electrode.moveTo(BenchStation.HIGH, BENCH_CELSIUS);
        verified = tell("verify", "standard=high", "--wait");
        recordsMeanwhile = Ran.restpoint(folder, "records", station, "--as", "jsonl");
        listenLate(broker);
        exitStatus = service.terminate();
        output = service.output();
      }
      listenToTheEnd(farm);
    }
  }

  private Ran tell(String... instruction) {
    List<Object> arguments = new ArrayList<>(List.of("tell", station, BenchStation.PROBE));
    arguments.addAll(List.of(instruction));
    return Ran.restpoint(folder, arguments.toArray());
  }

  private void listenLate(Mosquitto broker) {
    try (Subscriber late = Subscriber.connect(broker.url(), "late")) {
      late.subscribe("restpoint/#", 1);
      heardLate.add(late.next(message -> message.topic().endsWith("/online")));
      heardLate.add(late.next(message -> message.topic().endsWith("/state")));
    }
    try (Subscriber late = Subscriber.connect(broker.url(), "later")) {
      late.subscribe(BenchStation.topic("calibration"), 1);
      heardLate.add(late.next());
    }
  }

  /** The service's last word comes after all that it said before. */
  private void listenToTheEnd(Subscriber farm) {
    Heard next = farm.next();
    while (!next.topic().endsWith("/online") || !next.payload().equals("false")) {
      heard.add(next);
      next = farm.next();
    }
  }

  private List<JsonNode> heard(String what) {
    return heard.stream()
        .filter(message -> message.topic().equals(BenchStation.topic(what)))
        .map(message -> Ran.parse(message.payload()))
        .toList();
  }

  private JsonNode sample() {
    return heard("result").get(1);
  }

  private Path written(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private Ran records(Object... options) {
    List<Object> arguments = new ArrayList<>(List.of("records", station));
    arguments.addAll(List.of(options));
    return Ran.restpoint(folder, arguments.toArray()).well();
  }

  /** Two roundings of the meter's 0.01 mV are all that stands between the two. */
  @Test
  void theTopicCarriesTheConcentrationOfTheNernstEquation() {
    JsonNode result = sample();
    assertThat(result.get("outcome").asText()).isEqualTo("settled");
    assertThat(result.at("/concentration/value").asDouble())
        .isCloseTo(
            SAMPLE,
            within(
                SAMPLE
                    * NitrateElectrode.rounding(
                        ScriptedElectrode.STEP_MILLIVOLTS, SAMPLE_CELSIUS)));
    assertThat(result.at("/concentration/unit").asText()).isEqualTo("mg/L");
    assertThat(result.at("/concentration/basis").asText()).isEqualTo("as-N");
    assertThat(result.at("/sample/number").asText()).isEqualTo("S-17");
    assertThat(result.get("celsius").asDouble()).isEqualTo(SAMPLE_CELSIUS);
    assertThat(result.get("quality").asInt()).isEqualTo(3);
    assertThat(result.get("flags"))
        .extracting(JsonNode::asText)
        .containsExactly("temperature-differs");
    assertThat(result.get("caution").asText()).startsWith("A screening result");
  }

  /** The slope is taken between two potentials, each half a step off at most. */
  @Test
  void theCalibrationHasTheSlopeAndTheOffsetOfTheElectrode() {
    JsonNode calibration = heard("calibration").get(1);
    double slope = NitrateElectrode.slopeMillivoltsPerDecade(BENCH_CELSIUS);
    double decades = Math.log10(BenchStation.HIGH / BenchStation.LOW);
    double slopeRounding = ScriptedElectrode.STEP_MILLIVOLTS / decades;
    assertThat(calibration.get("verdict").asText()).isEqualTo("accepted");
    assertThat(calibration.get("slopeFrom").asText()).isEqualTo("fitted");
    assertThat(calibration.get("slopeMillivoltsPerDecade").asDouble())
        .isCloseTo(slope, within(slopeRounding));
    assertThat(calibration.get("slopePercent").asDouble())
        .isCloseTo(97, within(-97 * slopeRounding / slope));
    assertThat(calibration.get("referenceCelsius").asDouble()).isEqualTo(BENCH_CELSIUS);
  }

  @Test
  void aKnownStandardIsRecovered() {
    JsonNode check = heard("result").get(2);
    assertThat(check.at("/verification/standard").asText()).isEqualTo("high");
    assertThat(check.at("/verification/recoveryPercent").asDouble())
        .isCloseTo(
            100,
            within(
                100 * NitrateElectrode.rounding(ScriptedElectrode.STEP_MILLIVOLTS, BENCH_CELSIUS)));
  }

  @Test
  void progressIsToldWhileItSettlesAtMostOnceASecond() {
    List<JsonNode> progress = heard("settling");
    assertThat(progress).as("of four readings of over two seconds").hasSizeGreaterThanOrEqualTo(4);
    assertThat(progress).allSatisfy(said -> assertThat(said.get("readings").asInt()).isPositive());
    for (int i = 1; i < progress.size(); i++) {
      JsonNode earlier = progress.get(i - 1);
      JsonNode later = progress.get(i);
      if (beginMillis(earlier) == beginMillis(later)) {
        assertThat(timeMillis(later) - timeMillis(earlier)).isGreaterThanOrEqualTo(1000);
      }
    }
  }

  private static long timeMillis(JsonNode said) {
    return Instant.parse(said.get("time").asText()).toEpochMilli();
  }

  /** When the reading began that is told of. */
  private static long beginMillis(JsonNode progress) {
    return timeMillis(progress) - Math.round(1000 * progress.get("elapsedSeconds").asDouble());
  }

  @Test
  void whoComesLateHearsTheStateTheCalibrationAndThatTheServiceIsThere() {
    assertThat(heardLate).allMatch(Heard::retained);
    assertThat(heardLate.get(0))
        .isEqualTo(new Heard("restpoint/willow-bench/online", "true", true));
    assertThat(Ran.parse(heardLate.get(1).payload()).get("state").asText()).isEqualTo("ready");
    assertThat(Ran.parse(heardLate.get(2).payload())).isEqualTo(heard("calibration").get(1));
  }

  @Test
  void tellPrintsTheAnswersWithTheOutcome() {
    assertThat(measured.exitStatus()).isZero();
    assertThat(measured.err()).isEmpty();
    List<JsonNode> answers = measured.json();
    assertThat(answers)
        .extracting(answer -> answer.get("verdict").asText())
        .containsExactly("accepted", "done");
    assertThat(answers.get(1).get("outcome")).isEqualTo(sample());
    assertThat(calibrated.json().get(1).get("outcome")).isEqualTo(heard("calibration").get(1));
    assertThat(verified.json().get(1).get("outcome")).isEqualTo(heard("result").get(2));
  }

  @Test
  void aMeasurementBeforeAnyCalibrationIsRefused() {
    assertThat(tooEarly.exitStatus()).isEqualTo(5);
    assertThat(tooEarly.err())
        .isEqualTo(
            "restpoint: measure was refused: no calibration is in force."
                + " Read the standards first: calibrate, once for each standard.\n");
    assertThat(tooEarly.json().get(0).get("outcome")).isEqualTo(heard("result").get(0));
    assertThat(heard("result").get(0).get("outcome").asText()).isEqualTo("refused");
    assertThat(heard("result").get(0).has("concentration")).isFalse();
  }

  @Test
  void aStandardThatIsNotDefinedIsRefused() {
    assertThat(unknownStandard.exitStatus()).isEqualTo(5);
    assertThat(unknownStandard.err())
        .isEqualTo(
            "restpoint: calibrate was refused: standard mid is not one of this probe's standards:"
                + " low, high. Name one of them, or define it in the station file and list it under"
                + " calibrate.\n");
    assertThat(heard("notice"))
        .extracting(notice -> notice.get("code").asText())
        .containsExactly("standard-unknown");
  }

  @Test
  void recordsGiveTheVeryObjectsThatWerePublished() {
    assertThat(recordsMeanwhile.well().json()).isEqualTo(heard("result"));
    assertThat(records("--as", "jsonl").json()).isEqualTo(heard("result"));
    assertThat(records("--of", "calibrations", "--as", "jsonl").json())
        .isEqualTo(heard("calibration"));
    assertThat(records("--of", "notices", "--as", "jsonl").json()).isEqualTo(heard("notice"));
  }

  @Test
  void recordsAsATableSayTheSame() {
    List<NamedCsvRecord> rows =
        CsvReader.builder().ofNamedCsvRecord(records().out()).stream().toList();
    assertThat(rows).hasSize(3);
    NamedCsvRecord row = rows.get(1);
    assertThat(row.getField("id")).isEqualTo(sample().get("id").asText());
    assertThat(row.getField("value")).isEqualTo(sample().at("/reported/value").asText());
    assertThat(row.getField("uncertainty"))
        .isEqualTo(sample().at("/reported/uncertainty").asText());
    assertThat(row.getField("sample")).isEqualTo("{\"number\":\"S-17\"}");
    assertThat(row.getField("calibration"))
        .isEqualTo(heard("calibration").get(1).get("id").asText());
  }

  @Test
  void theSessionReplayedGivesTheSameNumbersToTheLastDigit() throws IOException {
    Path readings = written("readings.csv", records("--of", "readings", "--as", "csv").out());
    Path instructions = written("instructions.jsonl", records("--of", "instructions").out());
    Ran replayed =
        Ran.restpoint(folder, "replay", station, readings, "--instructions", instructions).well();
    assertThat(replayed.json())
        .filteredOn(event -> event.get("event").asText().equals("result"))
        .isEqualTo(heard("result"));
    assertThat(replayed.json())
        .filteredOn(event -> event.get("event").asText().equals("calibration"))
        .isEqualTo(heard("calibration"));
    assertThat(replayed.json())
        .filteredOn(event -> event.get("event").asText().equals("notice"))
        .isEqualTo(heard("notice"));
  }

  @Test
  void sigtermEndsItInOrder() {
    assertThat(exitStatus).isZero();
    assertThat(output).isEmpty();
  }
}
