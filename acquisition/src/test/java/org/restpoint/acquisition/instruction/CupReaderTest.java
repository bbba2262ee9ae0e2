package org.restpoint.acquisition.instruction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.EventJson;

class CupReaderTest {

  private static List<Cup> cups(String cups) {
    String json = "{\"do\":\"batch\",\"cups\":%s}".formatted(cups.replace('\'', '"'));
    return ((Instruction.Batch) InstructionReader.read(json).instruction().task()).cups();
  }

  @Test
  void aCupIsReadByTheInstructionThatAPersonWouldGive() {
    List<Cup> cups =
        cups(
            "[{'cup':'1','standard':'mid'},{'cup':'2','sample':'S-1'},{'cup':'3','check':'mid'},"
                + "{'cup':'4','rinse':true}]");
    assertThat(cups)
        .extracting(Cup::reading)
        .map(reading -> reading.map(Instruction.Task::word).orElse("none"))
        .containsExactly("calibrate", "measure", "verify", "none");
    assertThat(cups)
        .extracting(Cup::words)
        .containsExactly(
            "cup 1 (standard mid)",
            "cup 2 (sample S-1)",
            "cup 3 (standard mid as a check)",
            "cup 4 (to rinse in)");
    assertThat(cups)
        .extracting(cup -> cup.standard().orElse(""))
        .containsExactly("mid", "", "mid", "");
  }

  @Test
  void aCupIsWrittenAsItStandsInTheListAndReadAgain() throws JsonProcessingException {
    Cup cup = cups("[{'cup':'2','sample':{'number':'S-1','field':'north'}}]").get(0);
    String json = EventJson.write(cup);
    assertThat(json)
        .isEqualTo("{\"cup\":\"2\",\"sample\":{\"number\":\"S-1\",\"field\":\"north\"}}");
    assertThat(EventJson.mapper().readValue(json, Cup.class)).isEqualTo(cup);
    assertThat(cup.holds()).isEqualTo("sample S-1");
  }

  @Test
  void allMistakesAreToldAtOnceEachWithItsCup() {
    assertThatThrownBy(
            () ->
                cups(
                    "[{'cup':'1','standard':'mid'},{'cup':'1','sample':'S-1'},{'cup':'3'},7,"
                        + "{'cup':'5','sample':5},{'cup':'6','rinse':true,'recipe':'soil'},"
                        + "{'cup':'7','sample':'S-2','hurry':true},{'sample':'S-3'}]"))
        .isInstanceOf(InstructionException.class)
        .hasMessage(
            """
            cup 1 (at 2): expected a name of its own; found it again, first at 1
            cup 3 (at 3): expected exactly one of standard, sample, check, blank, duplicate, spike, rinse; found none
            cup at 4: expected a cup in braces, like {"cup":"2","sample":"S-1"}; found 7
            cup 5 (at 5): sample: expected a sample number in quotes, 1 to 200 characters, or a record in braces; found 5
            cup 6 (at 6): recipe: expected none for a cup to rinse in
            cup 7 (at 7): a cup takes cup, standard, sample, check, blank, duplicate, spike, rinse, recipe; found hurry
            cup at 8: cup is missing: expected its name""");
  }

  @Test
  void fiveHundredCupsAreTheMost() {
    assertThat(cups(rinses(500))).hasSize(500);
    assertThatThrownBy(() -> cups(rinses(501)))
        .hasMessage("cups: expected a list of 1 to 500 cups in braces; found 501 of them");
  }

  private static String rinses(int count) {
    return IntStream.rangeClosed(1, count)
        .mapToObj(i -> "{'cup':'%d','rinse':true}".formatted(i))
        .collect(Collectors.joining(",", "[", "]"));
  }
}
