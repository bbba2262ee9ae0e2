package org.restpoint.acquisition.station;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Answer.Verdict;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Forgotten;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.SampleRecord;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.probe.Archive;
import org.restpoint.acquisition.probe.Erased;
import org.restpoint.acquisition.probe.Output;
import org.restpoint.config.station.TemperatureSource;
import org.restpoint.stability.calibration.Reason;

/** What is answered to {@code forget}. */
class ForgetDeskTest {

  /** Keeps nothing that could be asked for, and says this of what it took out. */
  private record Erasing(Erased erased) implements Archive {

    @Override
    public Optional<Result> result(String id) {
      return Optional.empty();
    }

    @Override
    public List<Result> resultsOf(String sampleNumber) {
      return List.of();
    }

    @Override
    public Optional<SampleRecord> record(String sampleNumber) {
      return Optional.empty();
    }

    @Override
    public Erased forget(String sampleNumber) {
      return erased;
    }
  }

  /** Hears answers. */
  private record Heard(List<Answer> answers) implements Output {

    @Override
    public void event(Event event) {
      throw new AssertionError("nothing is published: " + event);
    }

    @Override
    public void answer(Answer answer) {
      answers.add(answer);
    }

    @Override
    public void confide(Answer answer) {
      throw new AssertionError("nothing is confided: " + answer);
    }
  }

  private static List<Answer> answers(Erased erased) {
    Heard heard = new Heard(new ArrayList<>());
    Optional<String> sample = Optional.of("S-1");
    new ForgetDesk("willow-bench", Map.of(), heard, new Erasing(erased))
        .take(
            Instant.parse("2026-04-02T14:00:00Z"),
            "no3-a",
            new Instruction(Optional.of("7"), new Instruction.Forget(sample)),
            sample);
    return heard.answers();
  }

  @Test
  void whatIsGoneIsCountedAndWhatIsOutOfOurHandsIsNamed() {
    List<Answer> answers = answers(new Erased(1, 200, 2, 0, Set.of(), true, Optional.empty()));
    assertThat(answers).extracting(Answer::verdict).containsExactly(Verdict.ACCEPTED, Verdict.DONE);
    Forgotten outcome = (Forgotten) answers.get(1).outcome().orElseThrow();
    assertThat(outcome.text())
        .isEqualTo(
            "1 result, 200 raw readings and what stood in 2 instructions of the sample are taken"
                + " out for good");
    assertThat(outcome.remedy()).startsWith("What was published before is out of our hands");
    assertThat(answers).noneMatch(answer -> answer.toString().contains("S-1"));
  }

  @Test
  void bytesThatAreLeftAreToldWithWhatToDo() {
    List<Answer> answers = answers(new Erased(1, 200, 2, 0, Set.of(), false, Optional.empty()));
    Forgotten outcome = (Forgotten) answers.get(1).outcome().orElseThrow();
    assertThat(outcome.clean()).isFalse();
    assertThat(outcome.remedy())
        .startsWith("Bytes of it are left in the journal's files")
        .contains("tell it again.");
  }

  @Test
  void whatCouldNotBeTakenOutIsRefusedAndSaysWhy() {
    List<Answer> answers = answers(Erased.failed("the disk is full"));
    assertThat(answers).extracting(Answer::verdict).containsExactly(Verdict.REFUSED);
    Reason reason = answers.get(0).reasons().get(0);
    assertThat(reason.code()).isEqualTo("not-forgotten");
    assertThat(reason.text()).endsWith(": the disk is full");
    assertThat(reason.remedy()).isEqualTo("Mend that and tell it again.");
  }

  @Test
  void aSampleThatNobodyKeepsIsUnknown() {
    assertThat(answers(Erased.nothing()).get(0).reasons().get(0).code())
        .isEqualTo("sample-unknown");
  }

  @Test
  void aSampleThatIsBeingReadIsNotForgottenUntilThen() {
    RigBench bench =
        new RigBench(
            new Stations().electrode(RigBench.PROBE, new TemperatureSource.Fixed(22, 1)).station());
    for (double milligrams : new double[] {10, 100}) {
      bench.tell("{'do':'calibrate','standard':'%s'}".formatted(milligrams == 10 ? "low" : "high"));
      bench.stand(milligrams, 30);
    }
    bench.tell("{'do':'measure','sample':'S-1'}");
    bench.stand(20, 1);
    Answer busy = bench.tell("{'do':'forget','sample':'S-1'}").get(0);
    assertThat(busy.reasons().get(0).code()).isEqualTo("busy");
    assertThat(busy.reasons().get(0).text()).isEqualTo("probe no3-a is reading it at this moment");
    bench.stand(20, 30);
    assertThat(bench.tell("{'do':'forget','sample':'S-1'}"))
        .extracting(Answer::verdict)
        .containsExactly(Verdict.ACCEPTED, Verdict.DONE);
  }
}
