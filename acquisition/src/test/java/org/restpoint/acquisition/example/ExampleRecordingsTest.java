package org.restpoint.acquisition.example;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The recordings under stability/examples are what {@link Examples} makes, to the last byte. */
class ExampleRecordingsTest {

  private static final Path STORED = Path.of("..", "stability", "examples");
  private static final Path MADE = Path.of("target", "examples");

  static Stream<Arguments> made() {
    return Examples.all().entrySet().stream()
        .map(example -> Arguments.of(example.getKey(), example.getValue()));
  }

  static Set<String> names() {
    return Examples.names();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("made")
  void aRecordingIsMadeFromFirstPrinciples(String name, MadeRecording made) throws IOException {
    Path there = Files.createDirectories(MADE.resolve(name));
    Files.writeString(there.resolve("recording.csv"), made.recording());
    Files.writeString(there.resolve("instructions.jsonl"), made.instructions());
    assertThatStored(name, "recording.csv", made.recording());
    assertThatStored(name, "instructions.jsonl", made.instructions());
  }

  private static void assertThatStored(String name, String file, String text) throws IOException {
    Path stored = STORED.resolve(name).resolve(file);
    assertThat(stored).as("copy it from acquisition/%s", MADE.resolve(name)).exists();
    assertThat(Files.readString(stored))
        .as("%s, made anew in acquisition/%s", file, MADE.resolve(name))
        .isEqualTo(text);
  }

  @ParameterizedTest
  @MethodSource("names")
  void aStationFileSaysThatAllOfItIsInvented(String name) throws IOException {
    assertThat(Files.readAllLines(STORED.resolve(name).resolve("station.yaml")))
        .first()
        .asString()
        .startsWith("# Invented: ");
  }
}
