package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.config.file.StationFile.Outcome;

class UnreadableFilesTest {

  @TempDir Path folder;
  private Fixture fixture;

  @BeforeEach
  void openFixture() {
    fixture = new Fixture(folder);
  }

  private static List<String> texts(Outcome outcome) {
    assertThat(outcome).isInstanceOf(Outcome.Refused.class);
    return ((Outcome.Refused) outcome).problems().stream().map(Problem::text).toList();
  }

  @Test
  void aFileThatIsNotThereIsTold() {
    Path file = folder.resolve("absent.yaml");

    assertThat(texts(StationFile.read(file, Fixture.VOCABULARY)))
        .containsExactly(
            "absent.yaml: expected a station file that can be read; found no such file;"
                + " check the path: "
                + file);
  }

  @Test
  void aFolderIsTold() {
    assertThat(texts(StationFile.read(folder, Fixture.VOCABULARY)))
        .containsExactly(
            folder.getFileName() + ": expected a station file that can be read; found a folder");
  }

  @Test
  void aFileOfManyMegabytesIsNotReadToItsEnd() throws IOException {
    Path file = folder.resolve("large.yaml");
    Files.write(file, new byte[3 << 20]);

    assertThat(texts(StationFile.read(file, Fixture.VOCABULARY)))
        .containsExactly(
            "large.yaml: expected a station file of at most 1 MiB; found a larger file");
  }

  @Test
  void bytesThatAreNotUtf8AreToldWithTheirLine() {
    byte[] bytes = "station: a\nbroker: \u00e9\n".getBytes(StandardCharsets.ISO_8859_1);

    assertThat(texts(fixture.read(bytes)))
        .containsExactly(
            "station.yaml (line 2): expected a text file in UTF-8;"
                + " found the byte 0xe9 that is not UTF-8");
  }

  @Test
  void nestingWithoutEndIsTold() {
    assertThat(fixture.problems("\n" + "[".repeat(100_000)))
        .containsExactly(
            "station.yaml (line 2): expected a station file in YAML;"
                + " found more than 32 levels of nesting");
  }

  @Test
  void aMappingInsideItselfIsReadOnce() {
    assertThat(fixture.problems("station: a\nbroker: embedded\nprobes: &p { a: *p }"))
        .first()
        .asString()
        .startsWith("probes.a.a (line 3): expected one of analyte,");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          ''                 | (line 1): expected a station file in YAML; found an empty file; begin with: station: a-name
          # nothing          | (line 1): expected a station file in YAML; found an empty file; begin with: station: a-name
          - station          | (line 1): expected a mapping with the keys station, broker, journal, http, logs, standards, recipes, probes, guidance; found a list
          a: 1¶--- ¶b: 1     | (line 2): expected one YAML document; found a second one; take one of them out
          a:¶  - b: [¶       | (line 3): expected a station file in YAML; found a YAML error: expected the node content, but found '<stream end>'
          a:¶→b: 1           | (line 2): expected a station file in YAML; found a YAML error: found character '\\t(TAB)' that cannot start any token; indent with spaces, never with tabs
          a: b: c            | (line 1): expected a station file in YAML; found a YAML error: mapping values are not allowed here
          a: *b              | (line 1): expected a station file in YAML; found a YAML error: found undefined alias b
          a: 1¶b: ␇          | (line 2): expected a station file in YAML; found the unprintable character U+0007
          """)
  void whatIsNoYamlIsToldWithItsLine(String content, String message) {
    String text = content.replace('¶', '\n').replace('→', '\t').replace('␇', '\u0007');

    assertThat(fixture.problems(text)).containsExactly("station.yaml " + message);
  }

  @Test
  void aKeyThatIsNoWordIsTold() {
    assertThat(fixture.problems(Fixture.example("smallest.yaml") + "? [a, b]\n: c\n"))
        .containsExactly("? (line 12): expected a word as key; found a list");
  }

  @Test
  void aMergeKeyIsAnUnknownKey() {
    assertThat(fixture.problems(Fixture.example("smallest.yaml") + "<<: { logs: json }\n"))
        .containsExactly(
            "<< (line 12): expected one of station, broker, journal, http, logs, standards,"
                + " recipes, probes, guidance; found <<");
  }

  @Test
  void aTagIsNotTakenForTheValue() {
    assertThat(
            fixture.problems(
                Fixture.changed("smallest.yaml", "broker: embedded", "broker: !x embedded")))
        .containsExactly(
            "broker (line 2): expected embedded, or a mapping with url;"
                + " found embedded with the tag !x");
  }

  @Test
  void controlCharactersNeverReachTheTerminal() {
    assertThat(fixture.problems("station: \"\\e[2J\"\nbroker: embedded\nprobes: {}"))
        .first()
        .isEqualTo(
            "station (line 1): expected a name of up to 64 letters, digits, - and _;"
                + " found \"\\u001b[2J\"");
  }
}
