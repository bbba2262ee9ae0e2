package org.restpoint.adapters.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The forms of ISO 8601 that stand behind a date and a time of day. */
class IsoTimeTest {

  @ParameterizedTest
  @CsvSource({
    "2026-04-02T14:03:00Z, 2026-04-02T14:03:00Z",
    "2026-04-02t14:03:00.250z, 2026-04-02T14:03:00.250Z",
    "2026-04-02T14:03:00+02, 2026-04-02T12:03:00Z",
    "2026-04-02T14:03:00-0530, 2026-04-02T19:33:00Z",
    "2026-04-02T14:03+05:45, 2026-04-02T08:18:00Z"
  })
  void anOffsetHasAnyOfItsForms(String written, String instant) {
    assertThat(IsoTime.FORMATTER.parse(written, OffsetDateTime::from).toInstant())
        .isEqualTo(instant);
  }

  @Test
  void withoutAnOffsetItIsALocalTime() {
    assertThat(
            IsoTime.FORMATTER.parseBest(
                "2026-04-02T14:03:00", OffsetDateTime::from, LocalDateTime::from))
        .isEqualTo(LocalDateTime.of(2026, 4, 2, 14, 3));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2026-04-02T14:03:00+2",
        "2026-04-02T14:03:00+25:00",
        "2026-04-02T14:03:00+02Z",
        "2026-02-30T14:03:00Z",
        "2026-04-02T24:00:01Z"
      })
  void whatNoCalendarOrClockHasIsRefused(String written) {
    assertThatExceptionOfType(DateTimeParseException.class)
        .isThrownBy(() -> IsoTime.FORMATTER.parse(written));
  }
}
