package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.adapters.mqtt.TimeField.Unit;

/** The time that a JSON message carries. */
class TimeFieldTest {

  private static Instant read(Unit unit, String time) throws RejectedMessageException {
    String payload = "{\"ts\":%s}".formatted(time);
    return new TimeField("/ts", unit)
        .in(StrictJson.parse(payload.getBytes(StandardCharsets.UTF_8)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "\"2026-04-02T12:00:00Z\"|2026-04-02T12:00:00Z",
        "\"2026-04-02T12:00Z\"|2026-04-02T12:00:00Z",
        "\"2026-04-02T14:00:00.1239+02:00\"|2026-04-02T12:00:00.123Z",
        "\"2026-04-02T14:00:00+0200\"|2026-04-02T12:00:00Z",
        "\"2026-04-02T02:30:00-09:30\"|2026-04-02T12:00:00Z",
        "1775131200|2026-04-02T12:00:00Z",
        "1775131200.1239|2026-04-02T12:00:00.123Z",
        "1.775131200001e9|2026-04-02T12:00:00.001Z",
        "-0.5|1969-12-31T23:59:59.500Z"
      })
  void aTextIsIsoWithAZoneAndANumberIsSeconds(String written, Instant time)
      throws RejectedMessageException {
    assertThat(read(Unit.SECONDS, written)).isEqualTo(time);
  }

  @ParameterizedTest
  @CsvSource({"1775131200123,2026-04-02T12:00:00.123Z", "1775131200123.9,2026-04-02T12:00:00.123Z"})
  void aNumberMayBeMilliseconds(String written, Instant time) throws RejectedMessageException {
    assertThat(read(Unit.MILLISECONDS, written)).isEqualTo(time);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "null|there is no time at /ts",
        "true|expected a time at /ts, a text or a number, found a boolean",
        "1e300|the time at /ts is too large a number",
        "\"2026-04-02T12:00:00\"|the time at /ts has neither Z nor an offset such as +02:00: 2026-04-02T12:00:00",
        "\"2026-02-30T12:00:00Z\"|expected a time at /ts such as 2026-04-02T14:03:00Z, found 2026-02-30T12:00:00Z",
        "\"noon\\n\"|expected a time at /ts such as 2026-04-02T14:03:00Z, found noon\\x0A",
        "\"1775131200\"|expected a time at /ts such as 2026-04-02T14:03:00Z, found 1775131200"
      })
  void anythingElseIsRejectedWithItsReason(String written, String reason) {
    assertThatThrownBy(() -> read(Unit.SECONDS, written))
        .isInstanceOf(RejectedMessageException.class)
        .hasMessage(reason);
  }
}
