package org.restpoint.adapters.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DecimalNumberTest {

  @ParameterizedTest
  @CsvSource({
    "187.4,187.4",
    "-12,-12",
    "+.5,0.5",
    "1.,1",
    "-1.25e2,-125",
    "' 7\t',7",
    "1E-3,0.001"
  })
  void aDecimalNumberIsRead(String text, double number) {
    assertThat(DecimalNumber.in(text)).hasValue(number);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", " ", ".", "-", "e5", "1e", "1,5", "NaN", "Infinity", "0x1p3", "1d", "1 2"})
  void anythingElseIsNone(String text) {
    assertThat(DecimalNumber.in(text)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"1e999", "999999e99999999"})
  void aNumberBeyondAllIsInfinite(String text) {
    assertThat(DecimalNumber.in(text)).hasValue(Double.POSITIVE_INFINITY);
  }
}
