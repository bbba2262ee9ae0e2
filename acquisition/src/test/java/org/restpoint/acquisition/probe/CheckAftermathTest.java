package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.restpoint.acquisition.probe.CheckedBench.BLANK;
import static org.restpoint.acquisition.probe.CheckedBench.SECOND;
import static org.restpoint.acquisition.probe.CheckedBench.bench;
import static org.restpoint.acquisition.probe.CheckedBench.revised;
import static org.restpoint.acquisition.probe.CheckedBench.sample;
import static org.restpoint.acquisition.probe.CheckedBench.setup;

import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Result;
import org.restpoint.config.station.Calibrate.Every;

/** Checks at the bench: when each is due and what follows from it. */
class CheckAftermathTest {

  @Test
  void aCheckThatFailsFlagsTheSamplesSinceTheLastOneThatPassedAndNoOther() {
    Bench bench = sample(sample(bench(), 1), 2).read(SECOND, 20);
    sample(sample(bench, 3), 4).forgetWhatWasSaid().read(SECOND, 16);

    assertThat(revised(bench))
        .containsExactly("S-3 2 check-failed-after", "S-4 2 check-failed-after");
    Result first = bench.all(Result.class).get(1);
    assertThat(first.quality()).isEqualTo(3);
    assertThat(first.revised().orElseThrow().because())
        .startsWith(
            "the check standard of 2026-04-02T14:00:24Z failed: standard second is recovered");
    assertThat(bench.all(Notice.class)).hasSize(1);
    assertThat(bench.notice().code()).isEqualTo("check-failed");
    assertThat(bench.notice().text())
        .matches(
            "the check standard failed: standard second is recovered at 80.0 ± \\d\\.\\d % \\(k = 2\\);"
                + " accepted are 90.0 to 110.0 %. The results of 2 samples since the one of"
                + " 2026-04-02T14:00:15Z that passed are flagged check-failed-after:"
                + " no3-a-20260402T140018.000Z, no3-a-20260402T140021.000Z");
    assertThat(bench.notice().remedy())
        .startsWith("Likely causes, in order: the portion was diluted by rinse water;")
        .contains("verify role=check-standard standard=second");
    assertThat(bench.state().nextStep())
        .startsWith("The last check standard failed: rinse and blot")
        .contains("verify role=check-standard standard=second - or go on:");
  }

  @Test
  void samplesAfterACheckThatFailedAreFlaggedUntilACalibrationOrACheckPasses() {
    Bench bench = sample(bench(), 1).read(SECOND, 24);
    assertThat(sample(bench, 2).result().flags()).containsExactly("check-failed");
    assertThat(sample(bench.calibrate("mid"), 3).result().flags()).isEmpty();

    bench.read(SECOND, 20).forgetWhatWasSaid().read(SECOND, 24);
    assertThat(revised(bench)).isEmpty();
    assertThat(bench.notice().text()).contains("No result of a sample since the one of");
    assertThat(sample(bench.read(SECOND, 20), 4).result().flags()).isEmpty();
  }

  @Test
  void aCalibrationDoesNotMendABlankThatFailed() {
    Bench bench = sample(bench(), 1).read(BLANK, 2);
    assertThat(revised(bench)).containsExactly("S-1 2 check-failed-after");
    assertThat(sample(bench.calibrate("mid"), 2).result().flags()).containsExactly("check-failed");
    assertThat(sample(bench.read(BLANK, 0.1), 3).result().flags()).isEmpty();
  }

  @Test
  void aCheckThatIsUncertainFlagsItselfAlone() {
    Bench bench = sample(bench(), 1).read(SECOND, 18.2);
    assertThat(bench.all(Notice.class)).isEmpty();
    assertThat(revised(bench)).isEmpty();
    assertThat(sample(bench, 2).read(SECOND, 16).notice().text())
        .contains("The results of 2 samples since the calibration of 2026-04-02T14:00:06Z");
  }

  @Test
  void aCheckIsAskedForWhenItIsDueAndSamplesReadMeanwhileSaySo() {
    Bench bench =
        bench(
            Map.of(
                CheckRole.CHECK_STANDARD, new Every.Samples(2),
                CheckRole.SPIKE, new Every.Span(Duration.ofHours(1))));
    assertThat(sample(bench, 1).state().nextStep()).startsWith("Rinse and blot (never wipe), put");
    assertThat(sample(bench, 2).result().flags()).isEmpty();
    assertThat(bench.state().nextStep())
        .isEqualTo(
            "A check standard is due: rinse and blot (never wipe), put the electrode into a fresh"
                + " portion of standard second, then: verify role=check-standard standard=second -"
                + " or go on: put the electrode into the sample, then: measure");
    assertThat(sample(bench, 3).result().flags()).containsExactly("check-due");
    assertThat(sample(bench.read(SECOND, 20), 4).result().flags()).isEmpty();
    bench.pass(Duration.ofMinutes(61));
    assertThat(sample(bench, 5).result().flags()).containsExactly("check-due");
    assertThat(bench.state().nextStep()).startsWith("A check standard is due");
    assertThat(bench.read(SECOND, 20).state().nextStep())
        .startsWith(
            "A spike is due: add 0.5 mL of 1000 mg/L to 50 mL of a sample measured before,");
    bench.read(CheckedBench.of("spike", "S-5"), 29.7);
    assertThat(bench.state().nextStep()).startsWith("Rinse and blot (never wipe), put");
  }

  @Test
  void whatWasCheckedIsKnownAfterARestart() {
    Bench bench = sample(sample(bench(), 1).read(SECOND, 20), 2);
    Bench later = sample(bench.restarted(setup(Map.of()), Duration.ofMinutes(1)), 3);
    later.read(SECOND, 24);
    assertThat(revised(later))
        .containsExactly("S-2 2 check-failed-after", "S-3 2 check-failed-after");
    Bench again = later.restarted(setup(Map.of()), Duration.ofMinutes(1));
    assertThat(sample(again, 4).result().flags()).containsExactly("check-failed");
  }

  @Test
  void anotherMembraneIsNotDoubtedForTheLastOne() {
    Bench bench = sample(bench(), 1).tell("{\"do\":\"replaced\"}");
    bench.calibrate("low").calibrate("high").read(SECOND, 24);
    assertThat(revised(bench)).isEmpty();
  }

  @Test
  void noMoreThanFiveHundredResultsAreRememberedAndTheNoticeSaysSo() {
    Bench bench = bench();
    for (int number = 1; number <= 503; number++) {
      sample(bench, number);
    }
    assertThat(bench.remembered().checks().orElseThrow().ids()).hasSize(500);
    bench.forgetWhatWasSaid().read(SECOND, 24);
    assertThat(revised(bench)).hasSize(500).first().isEqualTo("S-4 2 check-failed-after");
    assertThat(bench.notice().text())
        .contains("The results of 500 samples")
        .contains("no3-a-20260402T140018.000Z to no3-a-")
        .endsWith(
            "; 3 earlier ones are not, as no more than 500 are remembered: flag them by hand");
    assertThat(bench.remembered().checks().orElseThrow().ids()).hasSize(500);
  }

  @Test
  void recoveriesThatDriftAreToldOnce() {
    Bench bench = bench();
    for (int i = 0; i < 20; i++) {
      bench.read(SECOND, 20 + 0.1 * (i % 3));
    }
    for (int i = 0; i < 7; i++) {
      bench.read(SECOND, 20.35);
    }
    assertThat(bench.all(Notice.class)).extracting(Notice::code).containsExactly("check-drifting");
    assertThat(bench.all(Notice.class).get(0).text())
        .startsWith("recoveries of standard second (%) no longer scatter as they did:");
    assertThat(bench.all(Result.class)).allMatch(result -> result.flags().isEmpty());
  }
}
