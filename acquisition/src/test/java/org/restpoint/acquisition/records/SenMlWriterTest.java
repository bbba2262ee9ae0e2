package org.restpoint.acquisition.records;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.mqtt.MqttReadingFormat.SenMlRecords;
import org.restpoint.adapters.mqtt.Observation;
import org.restpoint.adapters.mqtt.RejectedMessageException;
import org.restpoint.adapters.mqtt.Wanted;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;

/** Results as a SenML pack, held to the rules of RFC 8428. */
class SenMlWriterTest {

  /** Primary units of RFC 8428, section 12.1, and RFC 8798, section 2, that are used here. */
  private static final Set<String> REGISTERED = Set.of("kg/m3", "/", "pH", "V", "Cel");

  private static final Set<String> LABELS = Set.of("bn", "bt", "n", "u", "v", "vs");

  private static final String OTHER =
      """
      {"event":"result","id":"%s","revision":1,"station":"bench","probe":"no3-a","outcome":"settled",
       "concentration":{"value":%s,"unit":"%s","basis":"%s","uncertainty":0.03,"coverage":2,"relation":"%s"},
       "reported":{"value":%s,"unit":"%s","basis":"%s","uncertainty":0.03,"coverage":2,"relation":"%s","kind":"%s"},
       %s"quality":3,"flags":["creeping","calibration-old"],"reasons":[]}""";

  @TempDir private Path folder;
  private long leftOut;

  private String pack(BenchJournal journal) {
    return journal.written(this::write);
  }

  private void write(JournalReader reader, StringWriter out) {
    leftOut = new SenMlWriter(reader, out).write(BenchJournal.ALL);
  }

  private BenchJournal journal() {
    return new BenchJournal(folder);
  }

  private static String other(
      String value, String unit, String basis, String relation, String more) {
    return OTHER.formatted(
        "r-9",
        value,
        unit,
        basis,
        relation,
        value,
        unit,
        basis,
        relation,
        "solution as measured",
        more);
  }

  @Test
  void aResultIsAFewRecordsUnderOneName() {
    assertThat(
            pack(
                journal()
                    .number("r-1", 1, "2026-04-02T14:06:25.5Z", "20.25", "{\"number\":\"S-1\"}")))
        .isEqualTo(
            """
            [
            {"bn":"restpoint/bench/no3-a/","bt":1775138785.500,"n":"concentration-as-N","u":"kg/m3","v":0.02025},
            {"n":"concentration-as-N/uncertainty","u":"kg/m3","v":0.00025},
            {"n":"potential","u":"V","v":0.18328},
            {"n":"temperature","u":"Cel","v":21.9},
            {"n":"quality","v":1},
            {"n":"sample","vs":"S-1"},
            {"n":"result","vs":"r-1"}
            ]
            """);
    assertThat(leftOut).isZero();
  }

  @Test
  void aLimitIsATextAndNeverANumber() {
    String pack =
        pack(
            journal()
                .entry(
                    "result",
                    "r-9",
                    1,
                    "2026-04-02T14:00:00Z",
                    other("0.5", "mg/L", "as-N", "<", "")));
    assertThat(pack)
        .contains("\"n\":\"concentration-as-N/text\",\"vs\":\"< 0.5 mg/L as-N\"}")
        .contains("{\"n\":\"flags\",\"vs\":\"creeping calibration-old\"}")
        .doesNotContain("kg/m3")
        .doesNotContain("0.0005");
  }

  @Test
  void whatHasNoRegisteredUnitIsAText() {
    assertThat(
            pack(
                journal()
                    .entry(
                        "result",
                        "r-9",
                        1,
                        "2026-04-02T14:00:00Z",
                        other("0.3", "mmol/L", "as-ion", "=", ""))))
        .contains("\"vs\":\"= 0.3 mmol/L as-ion\"")
        .doesNotContain("\"u\":");
  }

  @Test
  void aPhIsAPhAndDrySoilARatio() {
    String pack =
        pack(
            journal()
                .entry(
                    "result",
                    "r-8",
                    1,
                    "2026-04-02T14:00:00Z",
                    other("6.84", "[pH]", "as-ion", "=", ""))
                .entry(
                    "result",
                    "r-9",
                    1,
                    "2026-04-02T14:01:00Z",
                    OTHER.formatted(
                        "r-9",
                        "11.87",
                        "mg/L",
                        "as-N",
                        "=",
                        "23.74",
                        "mg/kg",
                        "as-N",
                        "=",
                        "dry soil",
                        "")));
    assertThat(pack)
        .contains("\"n\":\"pH\",\"u\":\"pH\",\"v\":6.84}")
        .contains("{\"n\":\"dry-soil-as-N\",\"u\":\"/\",\"v\":0.00002374}");
  }

  @Test
  void aKnownSolutionHasNamesOfItsOwn() {
    assertThat(
            pack(
                journal()
                    .entry(
                        "result",
                        "r-9",
                        1,
                        "2026-04-02T14:00:00Z",
                        other(
                            "20.0",
                            "mg/L",
                            "as-N",
                            "=",
                            "\"verification\":{\"role\":\"check-standard\"},"))))
        .contains("\"bn\":\"restpoint/bench/no3-a/check-standard/\"");
  }

  @Test
  void whatHasNoNumberOrNoTimeThatSenMlCanTellIsLeftOutAndCounted() {
    assertThat(
            pack(
                journal()
                    .number("r-0", 1, "1970-01-01T00:10:00Z", "20.0", "{}")
                    .entry(
                        "result",
                        "r-1",
                        1,
                        "2026-04-02T14:00:00Z",
                        "{\"event\":\"result\",\"outcome\":\"unsettled\"}")))
        .isEqualTo("[\n]\n");
    assertThat(leftOut).isEqualTo(2);
  }

  @Test
  void thePackKeepsTheRulesAndOurOwnReaderReadsIt() throws RejectedMessageException {
    String pack =
        pack(
            journal()
                .number("r-1", 1, "2026-04-02T14:00:00.125Z", "20.0", "{\"number\":\"S-1\"}")
                .number("r-1", 2, "2026-04-02T14:00:00.125Z", "20.1", "{\"number\":\"S-1\"}")
                .number("r-2", 1, "2026-04-02T14:01:00Z", "1e-7", "{\"number\":\"S-2\"}")
                .entry(
                    "result",
                    "r-3",
                    1,
                    "2026-04-02T14:02:00Z",
                    other("6.8", "[pH]", "as-ion", "=", "")));
    assertThat(names(pack)).doesNotHaveDuplicates();
    List<Observation> read =
        new SenMlRecords(
                new Wanted(
                    new Meaning(
                        Optional.of(PotentialScale.VOLTS), Optional.of(TemperatureScale.CELSIUS)),
                    Optional.of("restpoint/bench/no3-a/potential"),
                    Optional.of("restpoint/bench/no3-a/temperature")))
            .read(Instant.parse("2026-04-02T15:00:00Z"), pack.getBytes(StandardCharsets.UTF_8));
    assertThat(read)
        .extracting(observation -> observation.reading().time().toString())
        .containsExactly("2026-04-02T14:00:00.125Z", "2026-04-02T14:01:00Z");
    assertThat(read.get(0).reading().millivolts()).isEqualTo(OptionalDouble.of(183.28));
    assertThat(read.get(0).reading().celsius()).isEqualTo(OptionalDouble.of(21.9));
    assertThat(read).allMatch(Observation::ownTime);
  }

  /** Holds each record to sections 4.2 to 4.5; gives names and times. */
  private static List<String> names(String pack) {
    List<String> names = new ArrayList<>();
    String baseName = "";
    double baseTime = 0;
    for (JsonNode record : ResultQuery.parsed(pack)) {
      record.fieldNames().forEachRemaining(label -> assertThat(LABELS).contains(label));
      baseName = record.path("bn").asText(baseName);
      double before = baseTime;
      baseTime = record.path("bt").asDouble(baseTime);
      assertThat(baseTime).isGreaterThanOrEqualTo(before).isGreaterThan(1L << 28);
      String name = baseName + record.path("n").asText();
      assertThat(name).matches("[A-Za-z0-9][-A-Za-z0-9:./_]*");
      assertThat(record.has("v")).as(name).isNotEqualTo(record.has("vs"));
      assertThat(record.path("v").isNumber()).isEqualTo(record.has("v"));
      if (record.has("u")) {
        assertThat(REGISTERED).contains(record.path("u").asText());
      }
      names.add(name + "@" + baseTime);
    }
    return names;
  }
}
