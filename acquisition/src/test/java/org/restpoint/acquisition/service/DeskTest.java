package org.restpoint.acquisition.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.instruction.InstructionReader;

/** Which instructions are taken in and what is said of the others. */
@Timeout(120)
class DeskTest {

  private static final Instant START = Instant.parse("2026-04-02T14:00:00Z");

  @TempDir private Path folder;

  private List<JsonNode> answersTo(String... instructions) {
    try (LiveEngine engine = new LiveEngine(folder, Stations.brook(folder), START)) {
      for (String instruction : instructions) {
        engine.tell("no3-a", instruction);
      }
      return engine.end().sent("/no3-a/answer");
    }
  }

  private static void assertRefused(JsonNode answer, String code, String text, String remedy) {
    assertThat(answer.get("verdict").asText()).isEqualTo("refused");
    assertThat(answer.at("/reasons/0/code").asText()).isEqualTo(code);
    assertThat(answer.at("/reasons/0/text").asText()).isEqualTo(text);
    assertThat(answer.at("/reasons/0/remedy").asText()).isEqualTo(remedy);
  }

  @Test
  void textThatIsNotAnInstructionIsAnsweredWithWhatWasExpected() {
    List<JsonNode> answers = answersTo("measure", "{\"do\":\"mesure\"}", "[]");
    assertThat(answers).hasSize(3);
    assertThat(answers.get(0).at("/reasons/0/text").asText())
        .startsWith("expected an instruction as a JSON object; found text that is not JSON: ");
    assertRefused(
        answers.get(1),
        "instruction-unreadable",
        "do: expected an instruction (%s); found mesure"
            .formatted(String.join(", ", InstructionReader.WORDS)),
        "Mend it and send it again.");
    assertRefused(
        answers.get(2),
        "instruction-unreadable",
        "expected an instruction as a JSON object, like {\"do\":\"measure\"}; found other JSON",
        "Mend it and send it again.");
  }

  @Test
  void anIdIsUsedOnce() {
    List<JsonNode> answers =
        answersTo("{\"id\":\"7\",\"do\":\"soak\"}", "{\"id\":\"7\",\"do\":\"cancel\"}");
    assertThat(answers)
        .extracting(answer -> answer.get("verdict").asText())
        .containsExactly("accepted", "done", "refused");
    assertRefused(
        answers.get(2),
        "instruction-repeated",
        "an instruction with the id 7 was carried out before",
        "Give each instruction an id of its own.");
  }

  @Test
  void theLastWordOfABatchIsAnsweredAgainAndDoneOnce() {
    List<JsonNode> answers =
        answersTo(
            "{\"id\":\"b\",\"do\":\"batch\",\"cups\":[{\"cup\":\"1\",\"rinse\":true},"
                + "{\"cup\":\"2\",\"rinse\":true}]}",
            "{\"id\":\"n\",\"do\":\"next\"}",
            "{\"id\":\"n\",\"do\":\"next\"}",
            "{\"id\":\"b\",\"do\":\"next\"}");
    assertThat(answers)
        .extracting(answer -> answer.get("verdict").asText() + answer.at("/cup/cup").asText())
        .containsExactly("accepted", "done", "accepted", "done1", "accepted", "done1", "refused");
    assertThat(answers.get(6).at("/reasons/0/code").asText()).isEqualTo("instruction-repeated");
  }

  @Test
  void whatTheBrokerBringsAgainIsCarriedOutOnceAndNotAnsweredAgain() {
    try (LiveEngine engine = new LiveEngine(folder, Stations.brook(folder), START)) {
      engine.tell("no3-a", "{\"id\":\"7\",\"do\":\"soak\"}");
      engine.tell("no3-a", "{\"id\":\"7\",\"do\":\"soak\"}", true);
      assertThat(engine.end().sent("/no3-a/answer"))
          .extracting(answer -> answer.get("verdict").asText())
          .containsExactly("accepted", "done");
    }
  }

  @Test
  void anInstructionForAnotherProbeThanItsTopicIsRefused() {
    assertRefused(
        answersTo("{\"probe\":\"no3-b\",\"do\":\"soak\"}").get(0),
        "instruction-misaddressed",
        "the instruction names probe no3-b on the topic of probe no3-a",
        "Send it on the topic of the probe it is for.");
  }

  @Test
  void anInstructionGivenAMinuteAgoIsStillCarriedOut() {
    assertThat(
            answersTo("{\"time\":\"2026-04-02T13:59:00Z\",\"do\":\"soak\"}")
                .get(0)
                .get("verdict")
                .asText())
        .isEqualTo("accepted");
  }

  @Test
  void anInstructionThatIsMoreThanAMinuteOffIsRefused() {
    assertRefused(
        answersTo("{\"time\":\"2026-04-02T13:58:59Z\",\"do\":\"soak\"}").get(0),
        "instruction-late",
        "the instruction was given at 2026-04-02T13:58:59Z and it is 2026-04-02T14:00:00Z now; it"
            + " may be 1 min off",
        "Give it again; if it was given just now, set the clocks of both machines.");
  }

  @Test
  void anUnknownProbeIsAnsweredOnItsOwnTopic() {
    try (LiveEngine engine = new LiveEngine(folder, Stations.brook(folder), START)) {
      engine.tell("no3-b", "{\"do\":\"measure\"}");
      assertRefused(
          engine.end().sent("/no3-b/answer").get(0),
          "probe-unknown",
          "no3-b is not an electrode of this station: no3-a",
          "Name one of them.");
    }
  }
}
