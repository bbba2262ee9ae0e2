package org.restpoint.adapters.line;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DecimalMarkTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"' 12,5'|12.5", "-,5|-0.5", "1,25e2|125", "'-   3'|-3", "'+ 0,25 '|0.25", "7|7"})
  void aCommaStandsBeforeDecimals(String text, double number) {
    assertThat(DecimalMark.COMMA.number(text)).hasValue(number);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1.5", "1.234,5", "1,2,3", "1 234,5", ",", "", "- -3", "+-3", "--3"})
  void anythingElseIsNoNumberWithAComma(String text) {
    assertThat(DecimalMark.COMMA.number(text)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"'-  12.3',-12.3", "'+ .5',0.5", "12.,12"})
  void aSignMayStandApartFromItsDigits(String text, double number) {
    assertThat(DecimalMark.POINT.number(text)).hasValue(number);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1,5", "- - 3", "- +3", "-", "1 2", "3 -"})
  void anythingElseIsNoNumberWithAPoint(String text) {
    assertThat(DecimalMark.POINT.number(text)).isEmpty();
  }
}
