package org.restpoint.adapters.guess;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;

/** Numbers under invented names, and what they are taken for. */
class FieldGuessTest {

  private static Field field(String name, String... values) {
    return new Field("/" + name, name, Optional.empty(), List.of(values));
  }

  @ParameterizedTest
  @CsvSource({
    "mv, temp, millivolts, celsius",
    "millivolts, water_temp, millivolts, celsius",
    "eRaw, tempC, millivolts, celsius",
    "emf, t, millivolts, celsius",
    "sensor_uv, temperature, microvolts, celsius"
  })
  void namesOfOneOrSeveralWordsSayWhatANumberIs(
      String first, String second, String potential, String temperature) {
    FieldGuess guess =
        FieldGuess.of(
                List.of(
                    field("battery", "87"),
                    field(second, "21.5", "21.6"),
                    field(first, "187.4", "187.5")))
            .orElseThrow();

    assertThat(guess.potential().orElseThrow().name()).isEqualTo(first);
    assertThat(guess.temperature().orElseThrow().name()).isEqualTo(second);
    assertThat(guess.meaning().potential().map(PotentialScale::name)).contains(potential);
    assertThat(guess.meaning().temperature().map(TemperatureScale::name)).contains(temperature);
    assertThat(guess.doubts()).isEmpty();
  }

  @Test
  void aUnitCountsMoreThanAName() {
    FieldGuess guess =
        FieldGuess.of(
                List.of(
                    new Field("node:a", "a", Optional.of("V"), List.of("0.1874")),
                    new Field("node:b", "b", Optional.of("Cel"), List.of("21.5"))))
            .orElseThrow();

    assertThat(guess.meaning().potential()).contains(PotentialScale.VOLTS);
    assertThat(guess.temperature().orElseThrow().key()).isEqualTo("node:b");
  }

  @Test
  void numbersWhoseNamesSayNothingAreGuessedAndTheOtherIsNamed() {
    FieldGuess guess =
        FieldGuess.of(List.of(field("x", "12.5", "12.6"), field("y", "187.4", "-3.2")))
            .orElseThrow();

    assertThat(guess.potential().orElseThrow().key()).isEqualTo("/y");
    assertThat(guess.doubts())
        .containsExactly(
            "/y (-3.2 to 187.4) is taken for the potential; it could as well be /x (12.5 to 12.6)",
            "/x (12.5 to 12.6) is taken for the temperature by its values alone");
  }

  @Test
  void nothingIsTakenForAPotentialThatCannotBeOne() {
    assertThat(FieldGuess.of(List.of(field("ph", "7.01"), field("battery", "87")))).isEmpty();
  }
}
