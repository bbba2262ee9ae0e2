package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordsTest {

  @ParameterizedTest
  @CsvSource({
    "PT10M, 10 min",
    "PT90S, 90 s",
    "PT12H, 12 h",
    "PT0S, 0 s",
    "PT0.5S, 500 ms",
    "PT36H, 36 h"
  })
  void aSpanIsSaidInItsLargestWholeUnit(Duration span, String said) {
    assertThat(Words.span(span)).isEqualTo(said);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "-0.0, 0",
    "1234567, 1235000",
    "0.000123456, 0.0001235",
    "-59.1594, -59.16",
    "100, 100",
    "1e6, 1000000"
  })
  void aNumberIsSaidWithFourDigitsAndNoExponent(double value, String said) {
    assertThat(Words.number(value)).isEqualTo(said);
  }

  @Test
  void idsSayTheTimeAndCountWhatSharesIt() {
    Ids ids = new Ids("p", "", Long.MIN_VALUE, 0);
    Instant time = Instant.parse("2026-04-02T14:03:00.125Z");
    assertThat(ids.next(time)).isEqualTo("p-20260402T140300.125Z");
    assertThat(ids.next(time)).isEqualTo("p-20260402T140300.125Z-2");
    assertThat(ids.next(time.minusSeconds(1))).isEqualTo("p-20260402T140300.125Z-3");
    assertThat(ids.next(time.plusMillis(1))).isEqualTo("p-20260402T140300.126Z");
  }

  @Test
  void aProbeNamedLikeAnothersNoticesStillHasItsOwnIds() {
    Instant time = Instant.parse("2026-04-02T14:03:00Z");
    assertThat(new Ids("a", "-notice", Long.MIN_VALUE, 0).next(time))
        .isNotEqualTo(new Ids("a-notice", "", Long.MIN_VALUE, 0).next(time));
  }
}
