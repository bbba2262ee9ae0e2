package org.restpoint.acquisition.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.acquisition.event.EventJson;

class SampleReaderTest {

  private static ObjectNode json(String fields) {
    try {
      return (ObjectNode) EventJson.mapper().readTree("{%s}".formatted(fields));
    } catch (JsonProcessingException e) {
      throw new AssertionError(e);
    }
  }

  private static String read(String fields) {
    return SampleReader.read(json(fields)).toString();
  }

  private static ObjectNode pairs(String... pairs) {
    Map<String, String> map = new LinkedHashMap<>();
    for (String pair : pairs) {
      map.put(pair.split("=", 2)[0], pair.split("=", 2)[1]);
    }
    return SampleReader.read(map);
  }

  @ParameterizedTest
  @CsvFileSource(
      resources = "/samples/mistakes.csv",
      delimiter = '|',
      quoteCharacter = '`',
      numLinesToSkip = 1)
  void aWrongFieldIsRefusedWithWhatWasExpected(String fields, String sentence) {
    assertThatThrownBy(() -> read("\"number\":\"S-1\"," + fields))
        .isInstanceOf(SampleException.class)
        .hasMessage(sentence);
  }

  @Test
  void aRecordHasANumber() {
    assertThatThrownBy(() -> read("\"grower\":\"A\""))
        .hasMessage("number is missing: expected the number of the sample");
    assertThatThrownBy(() -> read("\"number\":\"\""))
        .hasMessage("number: expected text of 1 to 200 characters in one line; found \"\"");
    assertThatThrownBy(() -> read("\"number\":17"))
        .hasMessage("number: expected text of 1 to 200 characters in one line; found 17");
  }

  @Test
  void fieldsStandInTheirOrderAndValuesInOneForm() {
    assertThat(
            read(
                "\"latitude\":42.0,\"longitude\":-93.50,\"taken\":\"2026-04-02t09:15+0200\","
                    + "\"number\":\" S-1 \",\"notes\":\"a\\nb\",\"farm\":\"\""))
        .isEqualTo(
            "{\"number\":\"S-1\",\"farm\":\"\",\"taken\":\"2026-04-02T09:15:00+02:00\","
                + "\"latitude\":42,\"longitude\":-93.5,\"notes\":\"a\\nb\"}");
  }

  @Test
  void pairsOfTextsGiveTheSame() {
    assertThat(
            pairs(
                "number=17",
                "kind=tile water",
                "latitude=42.03",
                "longitude=-93.5",
                "cooled=YES",
                "containerRinsed=false",
                "keptCelsius=4",
                "grower="))
        .isEqualTo(
            json(
                "\"number\":\"17\",\"grower\":\"\",\"kind\":\"tile water\",\"latitude\":42.03,"
                    + "\"longitude\":-93.5,\"cooled\":true,\"keptCelsius\":4,"
                    + "\"containerRinsed\":false"));
    assertThatThrownBy(() -> pairs("number=1", "keptCelsius=cold", "colour=blue"))
        .hasMessageStartingWith("colour is no field of a sample; expected number, ")
        .hasMessageEndingWith("keptCelsius: expected a number from -50 to 60 Cel; found \"cold\"");
  }

  @Test
  void aSampleKnowsWhatItsRecordSays() {
    Sample sample =
        Sample.of(
            pairs(
                "number=S-1",
                "kind=well water",
                "taken=2026-04-02T09:15:00-05:00",
                "moisturePercent=18.5",
                "recipe=by mass"));
    assertThat(sample.kind()).contains(SampleKind.WELL_WATER);
    assertThat(sample.taken()).contains(OffsetDateTime.parse("2026-04-02T09:15-05:00"));
    assertThat(sample.moisturePercent()).hasValue(18.5);
    assertThat(sample.recipe()).contains("by mass");
    assertThat(sample.latitude()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"\"latitude\":42.03", "\"longitude\":42.03"})
  void halfAPositionIsNone(String half) {
    assertThatThrownBy(() -> Sample.of(json("\"number\":\"S-1\"," + half)))
        .isInstanceOf(SampleException.class)
        .hasMessageContaining("stands alone");
  }

  @Test
  void aSampleIsNotTakenTomorrowButClocksMayDifferByFiveMinutes() {
    Instant now = Instant.parse("2026-04-02T14:00:00Z");
    assertThat(Sample.of(pairs("number=S-1", "taken=2026-04-02T09:05:00-05:00")).takenAfter(now))
        .isEmpty();
    Sample late = Sample.of(pairs("number=S-1", "taken=2026-04-02T09:05:01-05:00"));
    assertThat(late.takenAfter(now))
        .contains("taken: expected a time that has passed; found 2026-04-02T09:05:01-05:00");
    assertThat(late.takenAfter(Instant.EPOCH)).as("no date to compare with").isEmpty();
  }

  @Test
  void whatIsToldReplacesWhatIsEmptyGoesAndAllElseStays() {
    ObjectNode kept = pairs("number=S-1", "grower=A", "farm=B", "notes=n");
    Merged merged =
        Merged.of(Optional.of(kept), pairs("number=S-1", "farm=", "notes=m", "field=C"));
    assertThat(merged.sample()).isEqualTo(pairs("number=S-1", "grower=A", "field=C", "notes=m"));
    assertThat(EventJson.write(merged.changed()))
        .isEqualTo(
            "[{\"field\":\"farm\",\"before\":\"B\"},{\"field\":\"field\",\"after\":\"C\"},"
                + "{\"field\":\"notes\",\"before\":\"n\",\"after\":\"m\"}]");
    assertThat(merged.because())
        .isEqualTo("the record of sample S-1 was corrected: farm, field, notes");
    assertThat(Merged.of(Optional.of(kept), pairs("number=S-1", "grower=A", "tract=")).changed())
        .isEmpty();
  }
}
