package org.restpoint.acquisition.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.instruction.InstructionReader;
import org.restpoint.acquisition.sample.SampleException;

/** What pairs of texts at a terminal make of an instruction. */
class TellFieldsTest {

  private static String put(String word, String... pairs) {
    return put(word, List.of(pairs)).toString().replace('"', '\'');
  }

  private static ObjectNode put(String word, List<String> pairs) {
    Map<String, String> texts = new LinkedHashMap<>();
    for (String pair : pairs) {
      texts.put(pair.substring(0, pair.indexOf('=')), pair.substring(pair.indexOf('=') + 1));
    }
    return TellFields.put(EventJson.mapper().createObjectNode().put("do", word), texts);
  }

  @Test
  void theExamplesOfThePageAreInstructions() throws IOException {
    List<String> told =
        Files.readString(Path.of("README.md"))
            .lines()
            .map(String::strip)
            .filter(line -> line.startsWith("restpoint tell "))
            .toList();
    assertThat(told).hasSizeGreaterThan(15);
    for (String line : told) {
      List<String> words =
          List.of(line.replaceFirst(" \\|.*", "").replace(" --wait", "").split(" ", -1));
      ObjectNode instruction = put(words.get(4), words.subList(5, words.size()));
      assertThat(InstructionReader.read(instruction.toString()).instruction().task().word())
          .as(line)
          .isEqualTo(words.get(4));
    }
  }

  @Test
  void aSampleThatIsMeasuredIsItsNumberUntilMoreIsToldOfIt() {
    assertThat(put("measure", "sample=S-1", "recipe=scoops", "private=true"))
        .isEqualTo("{'do':'measure','sample':'S-1','recipe':'scoops','private':true}");
    assertThat(put("measure", "sample=S-1", "grower=Ada", "keptCelsius=4", "recipe=scoops"))
        .isEqualTo(
            "{'do':'measure','sample':{'number':'S-1','grower':'Ada','keptCelsius':4},"
                + "'recipe':'scoops'}");
    assertThat(put("measure", "sample={\"number\":\"S-1\"}"))
        .isEqualTo("{'do':'measure','sample':{'number':'S-1'}}");
  }

  @Test
  void aFieldThatARecordCannotHaveIsSaid() {
    assertThatThrownBy(() -> put("measure", "sample=S-1", "kind=mud"))
        .isInstanceOf(SampleException.class)
        .hasMessageContaining("kind");
    assertThat(put("measure", "sample=S-1", "smaple=S-2")).contains("'smaple':'S-2'");
  }

  @Test
  void spansAreNumbersAndYesIsTrue() {
    assertThat(put("soak", "minutes=30")).isEqualTo("{'do':'soak','minutes':30}");
    assertThat(put("next", "skip=true")).isEqualTo("{'do':'next','skip':true}");
  }
}
