package org.restpoint.adapters.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.restpoint.adapters.quantity.Meanings;
import org.restpoint.adapters.quantity.Parsed;

/** The patterns that the module's README proposes read the lines that it shows beside them. */
class ReadmePatternsTest {

  private static final Pattern ROW =
      Pattern.compile("(?m)^\\| [^|`]*`(?<line>[^`|]+)` \\| `'(?<pattern>[^|]+)'` \\|$");

  @Test
  void everyPatternReadsItsLine() throws IOException {
    List<MatchResult> rows = ROW.matcher(Files.readString(Path.of("README.md"))).results().toList();

    assertThat(rows).hasSize(4);
    assertThat(rows)
        .allSatisfy(
            row -> {
              LinePattern pattern =
                  new LinePattern(
                      Pattern.compile(row.group(2)),
                      Meanings.of(row.group(2)),
                      DecimalMark.POINT,
                      Optional.empty());
              assertThat(pattern.read(row.group(1)))
                  .isInstanceOfSatisfying(
                      LineReading.Own.class,
                      own ->
                          assertThat(own.said())
                              .isInstanceOfSatisfying(
                                  Parsed.Values.class,
                                  values -> assertThat(values.millivolts()).hasValue(12.34)));
            });
  }
}
