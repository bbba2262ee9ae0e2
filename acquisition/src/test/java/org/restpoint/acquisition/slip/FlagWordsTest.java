package org.restpoint.acquisition.slip;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Whoever adds a flag says in {@code flags.properties} what it tells the reader of a slip. */
class FlagWordsTest {

  private static final Pattern CODE = Pattern.compile("`([a-z-]+)`");

  @Test
  void everyFlagOfTheTableOfCodesHasWords() throws IOException {
    List<String> flags = flagsOnThePage();
    assertThat(flags).contains("below-range", "above-range", "creeping", "busy");
    assertThat(flags).allSatisfy(flag -> assertThat(FlagWords.of(flag)).isNotEqualTo(flag));
  }

  @Test
  void aFlagOfALaterVersionIsToldByItsCode() {
    assertThat(FlagWords.of("not-yet-thought-of")).isEqualTo("not-yet-thought-of");
  }

  private static List<String> flagsOnThePage() throws IOException {
    List<String> flags = new ArrayList<>();
    for (String line : Files.readAllLines(Path.of("README.md"))) {
      String[] cells = line.split("\\|", -1);
      if (line.startsWith("| `") && cells.length == 6 && cells[2].matches(" f( r| n)* ")) {
        Matcher code = CODE.matcher(cells[1]);
        while (code.find()) {
          flags.add(code.group(1));
        }
      }
    }
    return flags;
  }
}
