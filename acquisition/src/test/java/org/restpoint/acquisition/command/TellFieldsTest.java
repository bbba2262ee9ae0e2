package org.restpoint.acquisition.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.sample.SampleException;

/** What pairs of texts at a terminal make of an instruction. */
class TellFieldsTest {

  private static String put(String word, String... pairs) {
    Map<String, String> texts = new LinkedHashMap<>();
    for (String pair : pairs) {
      texts.put(pair.substring(0, pair.indexOf('=')), pair.substring(pair.indexOf('=') + 1));
    }
    ObjectNode instruction = EventJson.mapper().createObjectNode().put("do", word);
    return TellFields.put(instruction, texts).toString().replace('"', '\'');
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
