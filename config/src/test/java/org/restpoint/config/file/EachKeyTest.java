package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;

/** One mistake a row: what stands in the example, what is put there, what is told. */
class EachKeyTest {

  @TempDir Path folder;

  @EachMistake
  void refusesWhatItCannotBe(String example, String from, String to, String message) {
    String written = to == null ? "" : to.replace('¶', '\n');

    assertThat(
            new Fixture(folder)
                .problems(Fixture.changed(example, from.replace('¶', '\n'), written)))
        .containsExactly(message);
  }
}
