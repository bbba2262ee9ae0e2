package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** One mistake a row: what stands in the example, what is put there, what is told. */
class EachKeyTest {

  @TempDir Path folder;

  @ParameterizedTest
  @CsvFileSource(
      resources = {
        "/mistakes.csv",
        "/mistakes-lab.csv",
        "/mistakes-checks.csv",
        "/mistakes-modbus.csv",
        "/mistakes-moves.csv",
        "/mistakes-numbers.csv",
        "/mistakes-mqtt.csv",
        "/mistakes-recording.csv",
        "/mistakes-recipes.csv",
        "/mistakes-simulated.csv",
        "/mistakes-serial.csv",
        "/mistakes-sdi12.csv",
        "/mistakes-guidance.csv"
      },
      delimiter = '|',
      numLinesToSkip = 1,
      maxCharsPerColumn = 10_000)
  void refusesWhatItCannotBe(String example, String from, String to, String message) {
    String written = to == null ? "" : to.replace('¶', '\n');

    assertThat(
            new Fixture(folder)
                .problems(Fixture.changed(example, from.replace('¶', '\n'), written)))
        .containsExactly(message);
  }
}
