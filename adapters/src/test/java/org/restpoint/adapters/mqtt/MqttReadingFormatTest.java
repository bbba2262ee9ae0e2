package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.adapters.quantity.Meanings;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;
import org.restpoint.stability.reading.Reading;

/** What is read from a payload, and with which words the rest is rejected. */
class MqttReadingFormatTest {

  private static final Instant TIME = Instant.parse("2026-04-02T12:00:00Z");

  private static Reading read(MqttReadingFormat format, String payload)
      throws RejectedMessageException {
    List<Observation> read = format.read(TIME, payload.getBytes(StandardCharsets.UTF_8));
    assertThat(read).hasSize(1);
    assertThat(read.get(0).ownTime()).isFalse();
    return read.get(0).reading();
  }

  private static MqttReadingFormat fields(String millivolts, String celsius) {
    return Formats.json(Formats.both(millivolts, celsius));
  }

  @ParameterizedTest
  @CsvSource({"187.4,187.4", "-12,-12", "+.5,0.5", "1.,1", "1.25e2,125", "' 187.4\n',187.4"})
  void aBareNumberIsAPotential(String payload, double millivolts) throws RejectedMessageException {
    assertThat(read(new MqttReadingFormat.BareNumber(), payload))
        .isEqualTo(Reading.ofMillivolts(TIME, millivolts));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "''|it is empty",
        "' '|it is empty",
        "NaN|expected a number such as 187.4",
        "187,4|expected a number such as 187.4",
        "187.4 mV|expected a number such as 187.4",
        "0x10|expected a number such as 187.4",
        "1d|expected a number such as 187.4",
        "1e999|Infinity mV is outside -10000 to 10000 mV"
      })
  void anythingElseIsNotABareNumber(String payload, String reason) {
    assertThatThrownBy(() -> read(new MqttReadingFormat.BareNumber(), payload))
        .isInstanceOf(RejectedMessageException.class)
        .hasMessage(reason);
  }

  @Test
  void pointersReachIntoObjectsAndArrays() throws RejectedMessageException {
    assertThat(
            read(
                fields("/data/1/e", "/a~1b"),
                "{\"data\": [0, {\"e\": -3}], \"a/b\": 25, \"more\": \"is passed over\"}"))
        .isEqualTo(Reading.of(TIME, -3, 25));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"{\"mv\": 1}", "{\"mv\": 1, \"t\": null}"})
  void aMissingTemperatureIsAReadingWithoutOne(String payload) throws RejectedMessageException {
    assertThat(read(fields("/mv", "/t"), payload)).isEqualTo(Reading.ofMillivolts(TIME, 1));
  }

  @Test
  void aThermometerHasNoPotential() throws RejectedMessageException {
    MqttReadingFormat thermometer = Formats.json(Formats.celsius("/t"));
    assertThat(read(thermometer, "{\"t\": 4.5}"))
        .isEqualTo(new Reading(TIME, OptionalDouble.empty(), OptionalDouble.of(4.5)));
    assertThatThrownBy(() -> read(thermometer, "{}")).hasMessage("there is nothing at /t");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "''|it is empty",
        "{\"mv\": \"12\"}|expected a number at /mv, found a string",
        "{\"mv\": true}|expected a number at /mv, found a boolean",
        "{\"mv\": [1]}|expected a number at /mv, found an array",
        "{\"mv\": {}}|expected a number at /mv, found an object",
        "{\"mv\": null}|there is nothing at /mv",
        "{\"t\": 20}|there is nothing at /mv",
        "7|there is nothing at /mv",
        "{\"mv\": 1, \"t\": \"x\"}|expected a number at /t, found a string",
        "{\"mv\": 1, \"t\": -127}|-127 Cel is outside -30 to 130 Cel",
        "{\"mv\": 1e999}|Infinity mV is outside -10000 to 10000 mV",
        "{\"mv\": 1e999999999}|Infinity mV is outside -10000 to 10000 mV",
        "{\"mv\": 1e99999999999}|it has a number with too large an exponent",
        "{\"x\": 1e-99999999999, \"mv\": 1}|it has a number with too large an exponent",
        "{\"mv\": NaN}|it is not strict JSON (line 1, column 11)",
        "{\"mv\": 1} {\"mv\": 2}|it is not strict JSON (line 1, column 11)",
        "{\"mv\": 1, \"mv\": 2}|it is not strict JSON (line 1, column 15)",
        "{\"mv\": 1|it is not strict JSON (line 1, column 9)",
        "{'mv': 1}|it is not strict JSON (line 1, column 2)"
      })
  void anythingElseIsRejectedWithItsReason(String payload, String reason) {
    assertThatThrownBy(() -> read(fields("/mv", "/t"), payload))
        .isInstanceOf(RejectedMessageException.class)
        .hasMessage(reason);
  }

  @Test
  void deepNestingIsRejectedAndNotFollowedToTheEnd() {
    assertThatThrownBy(() -> read(fields("/mv", "/t"), "[".repeat(4_096)))
        .isInstanceOf(RejectedMessageException.class)
        .hasMessage("it is not JSON, or nested too deeply");
  }

  @Test
  void settingsThatCannotWorkAreRefused() {
    assertThatThrownBy(() -> fields("mv", "/t"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("expected a JSON pointer such as /mv or /data/0/mv, found mv");
    assertThatThrownBy(() -> new MqttReadingFormat.SenMlRecords(Formats.both("a", "a")))
        .hasMessage("expected two names, found one for both: a");
    assertThatThrownBy(() -> new Wanted(Meanings.MILLIVOLTS, Optional.of("/mv"), Optional.of("/t")))
        .hasMessageStartingWith("each number needs a place, and each place a number: ");
  }

  @Test
  void pointersMayLeadToAnyOfTheQuantities() throws RejectedMessageException {
    Wanted wanted =
        Formats.scaled(PotentialScale.counts(0.0625, -2048), "/n", TemperatureScale.KELVIN, "/k");
    assertThat(read(Formats.json(wanted), "{\"n\": 34000, \"k\": 298.15}"))
        .isEqualTo(Reading.of(TIME, 77, 25));
  }
}
