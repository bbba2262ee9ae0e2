package org.restpoint.acquisition.station;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Answer.Verdict;
import org.restpoint.acquisition.event.BatchSummary;
import org.restpoint.acquisition.event.BatchSummary.Outcome;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.config.station.Moves;
import org.restpoint.config.station.TemperatureSource;
import org.restpoint.stability.calibration.Reason;

class BatchTest {

  private static RigBench bench(Moves moves) {
    return new RigBench(
        new Stations()
            .moves(moves)
            .electrode(RigBench.PROBE, new TemperatureSource.Fixed(22, 1))
            .station());
  }

  private static RigBench bench() {
    return bench(new Moves.Told());
  }

  private static BatchSummary summary(RigBench bench) {
    List<Answer> answers = bench.tell("{'do':'done'}");
    return (BatchSummary) answers.get(answers.size() - 1).outcome().orElseThrow();
  }

  @Test
  void aCupIsReadLikeAnInstructionAndAnsweredAsTheWordThatWasSaid() {
    RigBench bench = bench();
    bench.tell("{'do':'batch','cups':[{'cup':'1','standard':'low'}]}");
    bench.tell("{'do':'next'}");
    List<Answer> first = bench.tell("{'id':'7','do':'in-place','cup':'1'}");
    assertThat(first).extracting(Answer::verdict).containsExactly(Verdict.ACCEPTED);
    assertThat(bench.state().state()).isEqualTo("reading standard");
    assertThat(bench.state().cup()).contains("1");
    bench.stand(10, 30);
    Answer last = bench.answer();
    assertThat(last.instruction()).isEqualTo("in-place");
    assertThat(last.id()).contains("7");
    assertThat(last.verdict()).isEqualTo(Verdict.DONE);
    assertThat(last.outcome()).containsInstanceOf(Calibration.class);
    assertThat(last.cup().orElseThrow()).hasToString("{\"cup\":\"1\",\"standard\":\"low\"}");
  }

  @Test
  void standardsThatNobodyKnowsAreToldAllAtOnceAndNothingIsBegun() {
    RigBench bench = bench();
    List<Answer> answers =
        bench.tell(
            "{'do':'batch','cups':[{'cup':'1','standard':'lwo'},{'cup':'2','sample':'S-1'},{'cup':'3','check':'hihg'}]}");
    assertThat(answers).hasSize(1);
    assertThat(answers.get(0).reasons())
        .extracting(Reason::text)
        .containsExactly(
            "cup 1 (standard lwo): not one of this probe's standards: low, high",
            "cup 3 (standard hihg as a check): not one of this probe's standards: low, high");
    assertThat(bench.state().cup()).isEmpty();
  }

  @Test
  void aBatchEndedEarlySaysWhichCupsAreLeft() {
    RigBench bench = bench();
    bench.tell(
        "{'do':'batch','cups':[{'cup':'1','rinse':true},{'cup':'2','sample':'S-1'},{'cup':'3','sample':'S-2'},{'cup':'4','rinse':true}]}");
    bench.tell("{'do':'next'}");
    bench.tell("{'do':'in-place'}");
    bench.tell("{'do':'next'}");
    bench.tell("{'do':'in-place'}");
    BatchSummary summary = summary(bench);
    assertThat(summary.left()).containsExactly("3", "4");
    assertThat(summary.cups())
        .extracting(BatchSummary.Cup::outcome)
        .containsExactly(Outcome.RINSED, Outcome.REFUSED, Outcome.UNREAD, Outcome.UNREAD);
    assertThat(summary.cups().get(1).flags()).containsExactly("not-calibrated");
    assertThat(bench.tell("{'do':'next'}").get(0).reasons().get(0).code()).isEqualTo("batch-none");
  }

  @Test
  void waterToRinseInCountsAsRinsedAndACheckMayBeOfAStandardThatDoesNotCalibrate() {
    RigBench bench =
        new RigBench(
            new Stations()
                .careful()
                .electrode(RigBench.PROBE, new TemperatureSource.Fixed(22, 1))
                .station());
    bench.tell(
        "{'do':'batch','cups':[{'cup':'1','standard':'low'},{'cup':'2','sample':'S-1'},{'cup':'3','sample':'S-2'},{'cup':'4','rinse':true},{'cup':'5','sample':'S-3'},{'cup':'6','rinse':true},{'cup':'7','check':'second'}]}");
    for (double milligrams : new double[] {10, 20, 30, 0.1, 20, 0.1, 50}) {
      bench.tell("{'do':'next'}");
      bench.tell("{'do':'in-place'}");
      bench.stand(milligrams, 30);
    }
    BatchSummary summary = summary(bench);
    assertThat(summary.cups())
        .extracting(BatchSummary.Cup::outcome)
        .containsExactly(
            Outcome.ACCEPTED,
            Outcome.SETTLED,
            Outcome.SETTLED,
            Outcome.RINSED,
            Outcome.SETTLED,
            Outcome.RINSED,
            Outcome.SETTLED);
    assertThat(summary.cups())
        .filteredOn(cup -> cup.flags().contains("not-rinsed"))
        .extracting(BatchSummary.Cup::cup)
        .containsExactly("3");
  }

  @Test
  void theSummaryBearsTheFlagsThatResultsHaveByThen() {
    RigBench bench = bench();
    bench.tell("{'do':'batch','cups':[{'cup':'1','standard':'low'},{'cup':'2','sample':'S-1'}]}");
    for (double milligrams : new double[] {10, 20}) {
      bench.tell("{'do':'next'}");
      bench.tell("{'do':'in-place'}");
      bench.stand(milligrams, 30);
    }
    bench.flagLastResult("check-off");
    assertThat(summary(bench).cups().get(1).flags()).contains("ideal-slope", "check-off");
  }

  @Test
  void byAStepTheElectrodeIsSeenToMoveWithoutAir() {
    RigBench bench =
        bench(
            new Moves.ByItself(
                OptionalDouble.of(5),
                OptionalDouble.empty(),
                3,
                10,
                Duration.ofSeconds(5),
                Duration.ofMinutes(3)));
    bench.tell("{'do':'batch','cups':[{'cup':'1','standard':'low'},{'cup':'2','sample':'S-1'}]}");
    bench.tell("{'do':'in-place'}");
    bench.stand(10, 40).stand(30, 40);
    assertThat(summary(bench).cups())
        .extracting(BatchSummary.Cup::outcome)
        .containsExactly(Outcome.ACCEPTED, Outcome.SETTLED);
  }
}
