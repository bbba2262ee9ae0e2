package org.restpoint.acquisition.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.acquisition.event.Result;

class SentencesTest {

  @ParameterizedTest
  @CsvSource({
    "24.5149, 0.4496, 24.51 \u00b1 0.45",
    "12.666, 0.0996, 12.67 \u00b1 0.10",
    "100.2, 2.34, 100.2 \u00b1 2.3",
    "0.00123, 0.000456, 0.00123 \u00b1 0.00046",
    "1234.5, 123.4, 1234 \u00b1 120",
    "3.2, 0, 3 \u00b1 0",
  })
  void aValueHasAsManyDecimalsAsTwoDigitsOfItsUncertainty(
      double value, double uncertainty, String words) {
    assertThat(Sentences.amount(new Result.Amount(value, "mg/L", "as-N", uncertainty, 2, "=")))
        .isEqualTo(words);
  }

  @Test
  void flagsAreNamedOneOrMany() {
    assertThat(Sentences.flags(List.of())).isEmpty();
    assertThat(Sentences.flags(List.of("standard-due"))).isEqualTo("; flag standard-due");
    assertThat(Sentences.flags(List.of("one-point", "ideal-slope")))
        .isEqualTo("; flags one-point, ideal-slope");
  }
}
