package org.restpoint.acquisition.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.sample.SampleException;

class SampleListTest {

  private static final Instant NOW = Instant.parse("2026-04-02T20:00:00Z");

  @TempDir private Path folder;

  private Path file(String text, Charset charset) {
    try {
      return Files.write(folder.resolve("list.csv"), text.getBytes(charset));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private List<String> rows(String text) {
    return SampleList.read(file(text, StandardCharsets.UTF_8), NOW).stream()
        .map(row -> row.line() + " " + row.told().toString().replace('"', '\''))
        .toList();
  }

  private List<String> problems(String text) {
    return problems(file(text, StandardCharsets.UTF_8));
  }

  private static List<String> problems(Path file) {
    SampleException thrown =
        catchThrowableOfType(SampleException.class, () -> SampleList.read(file, NOW));
    return thrown.problems();
  }

  @Test
  void eachRowIsASampleAndAnEmptyCellTellsNothing() {
    assertThat(
            rows(
                """
                kind,number,grower,notes,cooled
                tile water,W-1,"Ada ""A."" Fields, jr","two
                lines",yes

                soil,S-2,,,
                """))
        .containsExactly(
            "2 {'number':'W-1','grower':'Ada \\'A.\\' Fields, jr','kind':'tile water',"
                + "'cooled':true,'notes':'two\\nlines'}",
            "5 {'number':'S-2','kind':'soil'}");
  }

  @Test
  void aSpreadsheetMayBeginWithAMarkAndSeparateBySemicolons() {
    assertThat(
            rows(
                String.join(
                    "\r\n",
                    "\uFEFFnumber;latitude;longitude;keptCelsius;grower;",
                    "W-1;42,03;-93,5;4;Feld, Ada;",
                    ";;;;;",
                    "")))
        .containsExactly(
            "2 {'number':'W-1','grower':'Feld, Ada','latitude':42.03,'longitude':-93.5,"
                + "'keptCelsius':4}");
    assertThat(rows("number\tkeptCelsius\nW-1\t4,5\n"))
        .containsExactly("2 {'number':'W-1','keptCelsius':4.5}");
  }

  @Test
  void everyMistakeIsToldWithItsLine() {
    assertThat(
            problems(
                """
                number,kind,growr,latitude,longitude,taken
                W-1,tile water,A,42.03,-93.5,2026-04-02T15:00:00Z
                W-2,mud,A,142.03,-93.5,2026-04-02T20:05:01Z
                ,soil,A,42.03,,
                W-1,soil,A,,,2026-04-02T20:05:01Z,more
                """))
        .containsExactly(
            "line 1: growr is no field of a sample; did you mean grower?",
            "line 3: kind: expected one of soil, tile water, well water, surface water, other;"
                + " found \"mud\"",
            "line 3: latitude: expected a number from -90 to 90 degrees north, WGS 84; found"
                + " 142.03",
            "line 4: number is missing: expected the number of the sample",
            "line 4: latitude, longitude: expected both or neither; found one of them",
            "line 5: cell 7 stands under no name: more",
            "line 5: taken: expected a time that has passed; found 2026-04-02T20:05:01Z",
            "line 5: number: W-1 stands in line 2 as well");
  }

  @Test
  void aListWithoutNumbersOrRowsIsNone() {
    assertThat(problems("grower,grower\nAda,Bea\n"))
        .containsExactly(
            "line 1: two columns are named grower",
            "line 1: expected names of fields, number among them; found no column number",
            "line 2: number is missing: expected the number of the sample");
    assertThat(problems("\n\n"))
        .containsExactly("expected a line of field names and a line for each sample; found none");
    assertThat(problems("number,grower\n"))
        .containsExactly("expected a line of field names and a line for each sample; found none");
  }

  @Test
  void aFileThatIsNoTextIsRefused() {
    assertThat(problems(file("number\nSjö-1\n", StandardCharsets.ISO_8859_1)))
        .containsExactly("it is not text in UTF-8; let the spreadsheet save it as CSV UTF-8");
    assertThat(problems(folder.resolve("none.csv"))).containsExactly("it is not there");
  }
}
