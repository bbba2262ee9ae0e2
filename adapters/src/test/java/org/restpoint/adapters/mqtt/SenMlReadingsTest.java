package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;
import org.restpoint.stability.reading.Reading;
import org.restpoint.stability.thermometer.Platinum;

/** Which readings a pack holds. */
class SenMlReadingsTest {

  private static final Instant NOW = Instant.parse("2026-04-02T12:00:00.123Z");
  private static final MqttReadingFormat BOTH = Formats.senml(Formats.both("n:e", "n:t"));

  private static List<Observation> read(MqttReadingFormat format, String pack)
      throws RejectedMessageException {
    return format.read(NOW, pack.getBytes(StandardCharsets.UTF_8));
  }

  private static Observation own(Reading reading) {
    return new Observation(reading, true);
  }

  @Test
  void recordsOfOneMomentAreOneReadingAndMomentsComeInOrder() throws RejectedMessageException {
    assertThat(
            read(
                BOTH,
                """
                [{"bn":"n:","bt":1775131200,"n":"e","u":"mV","t":10,"v":187.5},
                 {"n":"t","u":"Cel","t":10,"v":21.5},
                 {"n":"e","u":"V","t":0,"v":0.25},
                 {"n":"t","u":"K","t":5,"v":298.15},
                 {"n":"lid","vb":true}]
                """))
        .containsExactly(
            own(Reading.ofMillivolts(Instant.parse("2026-04-02T12:00:00Z"), 250)),
            own(
                new Reading(
                    Instant.parse("2026-04-02T12:00:05Z"),
                    OptionalDouble.empty(),
                    OptionalDouble.of(25))),
            own(Reading.of(Instant.parse("2026-04-02T12:00:10Z"), 187.5, 21.5)));
  }

  @Test
  void relativeTimesCountFromTheArrivalAndNoTimeIsThatOfArrival() throws RejectedMessageException {
    assertThat(
            read(
                BOTH,
                "[{\"n\":\"n:e\",\"v\":1},{\"n\":\"n:e\",\"t\":-4.5,\"v\":2},"
                    + "{\"n\":\"n:e\",\"t\":0.0309,\"v\":3}]"))
        .containsExactly(
            own(Reading.ofMillivolts(NOW.minusMillis(4500), 2)),
            new Observation(Reading.ofMillivolts(NOW, 1), false),
            own(Reading.ofMillivolts(NOW.plusMillis(30), 3)));
  }

  @Test
  void aTimeFromTwoToTheTwentyEighthOnIsAbsolute() throws RejectedMessageException {
    String pack = "[{\"n\":\"n:e\",\"bt\":%s,\"v\":1}]";
    assertThat(read(BOTH, pack.formatted("268435456")).get(0).time())
        .isEqualTo(Instant.ofEpochSecond(268_435_456));
    assertThat(read(BOTH, pack.formatted("268435455")).get(0).time())
        .isEqualTo(NOW.plusSeconds(268_435_455));
    assertThat(read(BOTH, pack.formatted("1.775131200001e+09")).get(0).time())
        .isEqualTo(Instant.parse("2026-04-02T12:00:00.001Z"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "[{\"n\":\"n:e\",\"v\":34000},{\"n\":\"n:t\",\"v\":100}]|77|0",
        "[{\"n\":\"n:e\",\"u\":\"count\",\"v\":34000},{\"n\":\"n:t\",\"u\":\"Ohm\",\"v\":100}]|77|0",
        "[{\"n\":\"n:e\",\"u\":\"mV\",\"v\":77},{\"n\":\"n:t\",\"u\":\"Cel\",\"v\":0}]|77|0"
      })
  void aUnitInTheRecordCountsAndWithoutOneTheSettingsDo(
      String pack, double millivolts, double celsius) throws RejectedMessageException {
    Wanted wanted =
        Formats.scaled(
            PotentialScale.counts(0.0625, -2048),
            "n:e",
            new TemperatureScale.Ohms(new Platinum(100)),
            "n:t");
    assertThat(read(Formats.senml(wanted), pack))
        .containsExactly(new Observation(Reading.of(NOW, millivolts, celsius), false));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "[{\"n\":\"n:e\",\"u\":\"A\",\"v\":1}]|expected V or mV as unit of n:e, found A",
        "[{\"n\":\"n:e\",\"u\":\"count\",\"v\":1}]|expected V or mV as unit of n:e, found count",
        "[{\"n\":\"n:e\",\"v\":1},{\"n\":\"n:t\",\"u\":\"C\",\"v\":1}]|expected Cel or K as unit of n:t, found C",
        "[{\"n\":\"n:e\",\"vs\":\"1\"}]|expected a number (v) in the record n:e, found vs",
        "[{\"n\":\"n:e\",\"vb\":true}]|expected a number (v) in the record n:e, found vb",
        "[{\"n\":\"n:e\",\"vd\":\"MQ\"}]|expected a number (v) in the record n:e, found vd",
        "[{\"n\":\"n:e\",\"s\":1}]|expected a number (v) in the record n:e, found no value",
        "[{\"n\":\"n:t\",\"v\":20}]|it has no record named n:e",
        "[{\"bn\":\"n\",\"n\":\"e\",\"v\":20}]|it has no record named n:e",
        "[]|it has no record named n:e",
        "[{\"n\":\"n:e\",\"v\":1},{\"n\":\"n:e\",\"v\":2}]|it has two values of n:e at 2026-04-02T12:00:00.123Z",
        "[{\"n\":\"n:e\",\"u\":\"V\",\"v\":12}]|12000 mV is outside -10000 to 10000 mV"
      })
  void whatHoldsNoReadingIsRejectedWithItsReason(String pack, String reason) {
    assertThatThrownBy(() -> read(BOTH, pack))
        .isInstanceOf(RejectedMessageException.class)
        .hasMessage(reason);
  }

  @Test
  void aThermometerTakesItsRecordsAlone() throws RejectedMessageException {
    MqttReadingFormat thermometer = Formats.senml(Formats.celsius("n:t"));
    String pack = "[{\"n\":\"n:e\",\"u\":\"A\",\"v\":1},{\"n\":\"n:t\",\"v\":4.5}]";
    assertThat(read(thermometer, pack).get(0).reading().celsius()).hasValue(4.5);
    assertThatThrownBy(() -> read(thermometer, "[]")).hasMessage("it has no record named n:t");
  }
}
