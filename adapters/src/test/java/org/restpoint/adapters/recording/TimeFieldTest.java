package org.restpoint.adapters.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.adapters.recording.TimeField.Form;

class TimeFieldTest {

  private final TimeField field = new TimeField(Instant.EPOCH);

  @ParameterizedTest
  @CsvSource({
    "2026-04-02T14:03:00Z, 2026-04-02T14:03:00Z",
    "2026-04-02T14:03:00.2Z, 2026-04-02T14:03:00.200Z",
    "2026-04-02T14:03:00.250Z, 2026-04-02T14:03:00.250Z",
    "2024-02-29T23:59:59.999Z, 2024-02-29T23:59:59.999Z",
    "1969-12-31T23:59:59.999Z, 1969-12-31T23:59:59.999Z",
    "0000-01-01T00:00:00Z, 0000-01-01T00:00:00Z",
    "2026-04-02T14:03:00.2504Z, 2026-04-02T14:03:00.250Z",
    "2026-04-02T14:03:00.2505Z, 2026-04-02T14:03:00.250Z",
    "2026-04-02T14:03:00.250500001Z, 2026-04-02T14:03:00.251Z",
    "2026-04-02T14:03:00.2515Z, 2026-04-02T14:03:00.252Z",
    "2026-12-31T23:59:59.9996Z, 2027-01-01T00:00:00Z",
    "2016-12-31T23:59:60Z, 2016-12-31T23:59:59Z",
    "2026-04-02T24:00:00Z, 2026-04-03T00:00:00Z",
    "+12026-04-02T14:03:00.2505Z, +12026-04-02T14:03:00.250Z"
  })
  void isoTimesAreReadToTheNearestMillisecond(String text, String expected) {
    assertThat(read(text)).isTrue();
    assertThat(field.form()).isEqualTo(Form.ISO);
    assertThat(Instant.ofEpochMilli(field.epochMillis())).isEqualTo(Instant.parse(expected));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "Z",
        "2026-04-02",
        "2026-04-02T14:03:00",
        "2026-04-02T14:03:00+02:00",
        "2026-02-30T00:00:00Z",
        "2026-13-01T00:00:00Z",
        "2026-00-01T00:00:00Z",
        "2026-04-00T00:00:00Z",
        "2026-04-02T25:00:00Z",
        "2026-04-02T14:60:00Z",
        "2026-04-02T14:03:61Z",
        "2026-04-02 14:03:00Z",
        "2026-04-02T14:03:00.1234567890Z",
        "2026-04-02T14:03:00,5Z",
        "2o26-04-02T14:03:00Z",
        "+1000000000-12-31T23:59:59Z",
        "1e3",
        "12.5.1",
        "-",
        ".",
        "123456789012",
        "12,5",
        "NaN"
      })
  void whatIsNoTimeIsNotRead(String text) {
    assertThat(read(text)).isFalse();
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "12.25, 12250",
    "+3, 3000",
    "-1.5, -1500",
    ".5, 500",
    "7., 7000",
    "0.0005, 0",
    "0.0015, 2",
    "0.00150000001, 2",
    "0.00050000001, 1",
    "-0.0015, -2",
    "0.9995, 1000",
    "99999999999, 99999999999000"
  })
  void secondsAreReadToTheNearestMillisecond(String text, long millis) {
    assertThat(read(text)).isTrue();
    assertThat(field.form()).isEqualTo(Form.SECONDS);
    assertThat(field.epochMillis()).isEqualTo(millis);
  }

  @Test
  void secondsAreCountedFromTheZero() {
    TimeField later = new TimeField(Instant.parse("2026-04-02T14:03:00Z"));
    char[] text = "90.5".toCharArray();
    assertThat(later.read(text, 0, text.length)).isTrue();
    assertThat(Instant.ofEpochMilli(later.epochMillis())).isEqualTo("2026-04-02T14:04:30.500Z");
    assertThatThrownBy(() -> new TimeField(Instant.ofEpochSecond(0, 1)))
        .hasMessage("the zero of a recording is finer than a millisecond");
  }

  @Test
  void anyTimeIsWhatTheLibraryReads() {
    Random random = new Random(7);
    for (int i = 0; i < 50_000; i++) {
      Instant any =
          Instant.ofEpochMilli(random.nextLong(-62_000_000_000_000L, 250_000_000_000_000L));
      assertThat(read(any.toString())).isTrue();
      assertThat(field.epochMillis()).isEqualTo(any.toEpochMilli());

      BigDecimal seconds = BigDecimal.valueOf(random.nextInt(), random.nextInt(8));
      assertThat(read(seconds.toPlainString())).isTrue();
      assertThat(field.epochMillis())
          .as(seconds.toPlainString())
          .isEqualTo(seconds.movePointRight(3).setScale(0, RoundingMode.HALF_EVEN).longValue());
    }
  }

  private boolean read(String text) {
    char[] within = ("7" + text + "7").toCharArray();
    return field.read(within, 1, within.length - 1);
  }
}
