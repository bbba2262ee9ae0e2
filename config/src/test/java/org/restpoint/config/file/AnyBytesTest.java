package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.lifecycle.BeforeContainer;
import org.restpoint.config.file.StationFile.Outcome;

class AnyBytesTest {

  private static Path folder = Path.of("");

  @BeforeContainer
  static void makeFolder() throws IOException {
    folder = Files.createTempDirectory("station-file");
  }

  @AfterContainer
  static void removeFolder() throws IOException {
    Files.deleteIfExists(new Fixture(folder).file());
    Files.delete(folder);
  }

  private static void assertOutcome(byte[] bytes) {
    Outcome outcome = new Fixture(folder).read(bytes);

    if (outcome instanceof Outcome.Refused refused) {
      assertThat(refused.problems()).isNotEmpty();
      assertThat(refused.problems()).allSatisfy(p -> assertThat(p.text()).doesNotContain("\n"));
    }
  }

  @Property(tries = 500)
  void anyBytesHaveAnOutcome(@ForAll @Size(max = 300) byte[] bytes) {
    assertOutcome(bytes);
  }

  @Property(tries = 500)
  void anyYamlLikeTextHasAnOutcome(@ForAll("yamlLike") String text) {
    assertOutcome(text.getBytes(StandardCharsets.UTF_8));
  }

  @Property(tries = 1000)
  void anExampleWithOnePieceReplacedHasAnOutcome(
      @ForAll("examples") String example,
      @ForAll @IntRange(max = 2500) int at,
      @ForAll @IntRange(max = 30) int removed,
      @ForAll("yamlLike") String put) {
    String text = Fixture.example(example);
    int from = Math.min(at, text.length());
    int to = Math.min(from + removed, text.length());

    assertOutcome(
        (text.substring(0, from) + put + text.substring(to)).getBytes(StandardCharsets.UTF_8));
  }

  @Provide
  Arbitrary<String> examples() {
    return Arbitraries.of("stream.yaml", "lab.yaml");
  }

  @Provide
  Arbitrary<String> yamlLike() {
    return Arbitraries.strings()
        .withChars(" \t\n:-?[]{}&*!|>'\"%@`#,~\\0123abcµ<(.\u0000")
        .ofMaxLength(60);
  }
}
