package org.restpoint.acquisition.schema;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.instruction.InstructionReader;
import org.restpoint.acquisition.sample.SampleField;

class ReadmeTest {

  private static final String README = read(Path.of("README.md"));

  /** A code where it is made: first among the arguments, or after a time and the like. */
  private static final Pattern CODE_IN_SOURCE =
      Pattern.compile(
          "(?:new Reason|new LinkTrouble|refused|notice|tell|flags\\.add|all\\.add)"
              + "\\(\\s*(?:\\w+,\\s*)*\"([a-z]+(?:-[a-z]+)*)\"");

  @Test
  void everyCodeThatIsSaidIsDocumentedWithItsRemedy() {
    assertThat(documentedCodes()).containsAll(codesSaid());
  }

  @Test
  void everyCodeInTheSourcesIsDocumentedToo() throws IOException {
    Set<String> inSources = new TreeSet<>();
    for (String module : List.of("acquisition", "adapters", "stability")) {
      try (Stream<Path> files = Files.walk(Path.of("..", module, "src/main/java"))) {
        for (Path file : files.filter(path -> path.toString().endsWith(".java")).toList()) {
          Matcher code = CODE_IN_SOURCE.matcher(read(file));
          while (code.find()) {
            inSources.add(code.group(1));
          }
        }
      }
    }
    assertThat(inSources)
        .contains("busy", "gap", "slope-low", "temperature-stale", "probe-unknown");
    Set<String> documented = new TreeSet<>(documentedCodes());
    documented.addAll(codesOfTheScience());
    assertThat(documented).containsAll(inSources);
  }

  @ParameterizedTest
  @ValueSource(strings = {"result", "calibration"})
  void everyFieldIsDocumented(String payload) {
    JsonNode schema = Schemas.schema(payload + ".json");
    Set<String> fields = new TreeSet<>();
    schema.path("properties").fieldNames().forEachRemaining(fields::add);
    schema
        .path("$defs")
        .forEach(part -> part.path("properties").fieldNames().forEachRemaining(fields::add));
    String section = section("A " + payload);
    assertThat(fields)
        .isNotEmpty()
        .allSatisfy(field -> assertThat(section).contains("`" + field + "`"));
  }

  @Test
  void everyFieldOfASampleIsDocumented() {
    assertThat(SampleField.keys())
        .allSatisfy(field -> assertThat(section("Samples")).contains("| `%s` |".formatted(field)));
  }

  @Test
  void everyStateIsDocumented() {
    JsonNode states = Schemas.schema("state.json").at("/properties/state/enum");
    assertThat(states).isNotEmpty();
    states.forEach(
        state -> assertThat(section("States")).contains("| `%s` |".formatted(state.asText())));
  }

  @Test
  void everyInstructionIsDocumented() {
    assertThat(InstructionReader.WORDS)
        .allSatisfy(
            word -> assertThat(section("Instructions")).contains("| `%s` |".formatted(word)));
  }

  @Test
  void theTopicsAreThoseOfTheAsyncApiDocument() {
    String topics = section("Topics");
    String asyncApi = Schemas.text("asyncapi.yaml");
    for (String payload : Schemas.PAYLOADS) {
      String topic = payload.equals("online") ? payload : "{probe}/" + payload;
      Matcher operation =
          Pattern.compile(
                  "'#/channels/"
                      + payload
                      + "/messages/"
                      + payload
                      + "'\\s+bindings:\\s+mqtt:\\s+"
                      + "qos: (\\d)\\s+retain: (true|false)")
              .matcher(asyncApi);
      assertThat(operation.find()).as(payload).isTrue();
      assertThat(topics)
          .contains(
              "| `%s` | %s | %s | `%s.json` |"
                  .formatted(
                      topic,
                      operation.group(1),
                      operation.group(2).equals("true") ? "yes" : "no",
                      payload));
    }
  }

  @Test
  void theExamplesInJsonAreWhatTheServiceSaysAndTakes() {
    List<String> examples = blocks("json");
    assertThat(examples).hasSize(7);
    for (String example : examples) {
      JsonNode object = Schemas.parse(example);
      boolean instruction = !object.has("event") && !object.has("verdict");
      if (instruction) {
        assertThat(InstructionReader.read(example).instruction()).isNotNull();
      }
      assertThat(Schemas.problems(instruction ? "instruction" : Schemas.payload(object), object))
          .as(example)
          .isEmpty();
    }
  }

  @Test
  void theExchangeOfABatchIsWhatTheServiceSaysAndTakes() {
    List<String> lines = blocks("jsonl").stream().flatMap(String::lines).toList();
    assertThat(lines).hasSizeGreaterThan(10);
    for (String line : lines) {
      JsonNode object = Schemas.parse(line);
      boolean instruction = !object.has("event") && !object.has("verdict");
      assertThat(Schemas.problems(instruction ? "instruction" : Schemas.payload(object), object))
          .as(line)
          .isEmpty();
      if (instruction) {
        assertThat(InstructionReader.read(line).instruction()).isNotNull();
      }
    }
  }

  @Test
  void theCautionStandsAtTheTop() {
    String asOneLine = README.replace("\n> ", " ");
    assertThat(asOneLine)
        .contains(Result.CAUTION.replace("A screening", "A result is a screening"));
    assertThat(asOneLine.indexOf("screening result")).isLessThan(README.indexOf("\n## "));
  }

  private static Set<String> codesSaid() {
    Set<String> codes = new TreeSet<>();
    for (JsonNode said : Scenes.all()) {
      said.path("flags").forEach(flag -> codes.add(flag.asText()));
      said.path("reasons").forEach(reason -> codes.add(reason.path("code").asText()));
      if (said.has("code")) {
        codes.add(said.path("code").asText());
      }
    }
    return codes;
  }

  /** The codes in the first column of the tables of codes, each in a row with a remedy. */
  private static Set<String> documentedCodes() {
    Set<String> codes = new TreeSet<>();
    for (String line : section("Codes").lines().toList()) {
      String[] cells = line.split("\\|", -1);
      if (line.startsWith("| `") && cells.length == 6 && !cells[4].isBlank()) {
        Matcher code = Pattern.compile("`([a-z-]+)`").matcher(cells[1]);
        while (code.find()) {
          codes.add(code.group(1));
        }
      }
    }
    return codes;
  }

  /** The codes in the first column of the tables of the science's own page. */
  private static Set<String> codesOfTheScience() throws IOException {
    Set<String> codes = new TreeSet<>();
    for (String line : read(Path.of("../stability/README.md")).lines().toList()) {
      if (line.startsWith("| `")) {
        Matcher code = Pattern.compile("`([a-z]+(?:-[a-z]+)*)`").matcher(line.split("\\|", -1)[1]);
        while (code.find()) {
          codes.add(code.group(1));
        }
      }
    }
    return codes;
  }

  private static String section(String heading) {
    int start = README.indexOf("\n## " + heading + "\n");
    assertThat(start).as("the section %s", heading).isNotNegative();
    int end = README.indexOf("\n## ", start + 1);
    return README.substring(start, end < 0 ? README.length() : end);
  }

  private static List<String> blocks(String language) {
    List<String> blocks = new ArrayList<>();
    Matcher block =
        Pattern.compile("^```" + language + "\n(.*?)^```$", Pattern.DOTALL | Pattern.MULTILINE)
            .matcher(README);
    while (block.find()) {
      blocks.add(block.group(1));
    }
    return blocks;
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
