package org.restpoint.adapters.sdi12;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.adapters.sdi12.Answer.Malformed;
import org.restpoint.adapters.sdi12.Answer.Understood;
import org.restpoint.adapters.sdi12.Measurement.Kind;

class DataAnswerTest {

  private static final Measurement PLAIN = new Measurement(Kind.ALONE, 0, false);

  private static List<Double> numbers(String row) {
    return Stream.of(row.split(" ")).map(Double::valueOf).toList();
  }

  @ParameterizedTest
  @CsvFileSource(resources = "/published/sdi12-answers.csv", useHeadersInDisplayName = true)
  void thePrintedAnswersAreReadAndTheirCheckCharactersFit(Kind kind, String answer, String values) {
    List<Double> expected = values == null ? List.of() : numbers(values);

    assertThat(DataAnswer.read(answer, new Measurement(kind, 0, true)))
        .isEqualTo(new Understood<>(expected));
  }

  @Test
  void theRemainderOfTheCatalogueIsSpelledInThreeParts() {
    // 0xBB3D for 123456789, see published/crc16.csv: 1011, 101100, 111101.
    assertThat(CheckCharacters.of("123456789")).isEqualTo("Kl}");
  }

  @ParameterizedTest
  @CsvSource({
    "0+3.15OqZ, 'the check characters of \"0+3.15OqZ\" do not fit'",
    "0+3.14, 'the check characters of \"0+3.14\" do not fit'",
    "0OZ, '\"0OZ\" is too short to have its three check characters'"
  })
  void whatDoesNotFitItsCheckCharactersIsRefused(String answer, String reason) {
    assertThat(DataAnswer.read(answer, new Measurement(Kind.ALONE, 0, true)))
        .isEqualTo(new Malformed<>(reason));
  }

  @ParameterizedTest
  @CsvSource({
    "0+3.14+2.718, 3.14 2.718",
    "0-.5+1., -0.5 1",
    "0+1234567-0.00045, 1234567 -0.00045",
    "0+0-0, 0 -0"
  })
  void valuesFollowEachOtherBySign(String answer, String values) {
    assertThat(DataAnswer.read(answer, PLAIN)).isEqualTo(new Understood<>(numbers(values)));
  }

  @Test
  void anAddressAloneHasNoValues() {
    assertThat(DataAnswer.read("0", PLAIN)).isEqualTo(new Understood<>(List.of()));
  }

  @ParameterizedTest
  @CsvSource({
    "03.14, 2",
    "0+3.14OqZ, 7",
    "0+, 2",
    "0+.+1, 2",
    "0+12345678, 2",
    "0+1.2.3, 6",
    "0+1e5, 4",
    "0+1 +2, 4",
    "0+1+NaN, 4"
  })
  void whatIsNoValueIsRefusedByItsPlace(String answer, int place) {
    assertThat(DataAnswer.read(answer, PLAIN))
        .isEqualTo(
            new Malformed<>(
                "\"%s\" has no value at character %d: a sign and one to seven digits"
                    .formatted(answer, place)));
  }

  @Test
  void moreThanAnAnswerMayHaveIsRefusedByTheCommand() {
    String thirtyFive = "0" + "+123456".repeat(5);
    Measurement concurrent = new Measurement(Kind.CONCURRENT, 0, false);

    assertThat(DataAnswer.read(thirtyFive, PLAIN)).isInstanceOf(Understood.class);
    assertThat(DataAnswer.read(thirtyFive + "+1", PLAIN))
        .isEqualTo(
            new Malformed<>(
                "\"%s+1\" has 37 characters of values, 35 at most".formatted(thirtyFive)));
    assertThat(DataAnswer.read(thirtyFive + "+1", concurrent)).isInstanceOf(Understood.class);
    assertThat(DataAnswer.read("0" + "+1".repeat(38), concurrent)).isInstanceOf(Malformed.class);
  }

  @Test
  void anyBytesAreReadOrRefused() {
    Random random = new Random(12);
    for (int tries = 0; tries < 2_000; tries++) {
      StringBuilder noise = new StringBuilder("0");
      random.ints(random.nextInt(40), 0, 256).forEach(c -> noise.append((char) c));
      String line = noise.toString();

      for (Kind kind : Kind.values()) {
        assertThat(DataAnswer.read(line, new Measurement(kind, 0, tries % 2 == 0))).isNotNull();
        assertThat(Announcement.read(line, kind)).isNotNull();
      }
      assertThat(Identification.read(line)).isNotNull();
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 4, 9})
  void everyWrongBitIsFound(int length) {
    String text = "0+123.456".substring(0, length);
    String whole = text + CheckCharacters.of(text);

    for (int bit = 0; bit < whole.length() * 7; bit++) {
      char[] wrong = whole.toCharArray();
      wrong[bit / 7] ^= (char) (1 << bit % 7);
      assertThat(CheckCharacters.checked(new String(wrong))).isInstanceOf(Malformed.class);
    }
  }
}
