package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Verification;
import org.restpoint.config.station.Calibrate.Every;

/** Checks at the bench: what each is judged by, when it is due and what follows from it. */
class ChecksTest {

  private static final String SECOND = "{'do':'verify','standard':'second'}";
  private static final String BLANK = "{'do':'verify','role':'blank'}";

  private static Setup setup(Map<CheckRole, Every> every) {
    return Setup.nitrate().with(Changes.checked(Changes.plan(every)));
  }

  private static Bench bench(Map<CheckRole, Every> every) {
    return Bench.of(setup(every)).calibrate("low").calibrate("high");
  }

  private static Bench bench() {
    return bench(Map.of());
  }

  private static String of(String role, String sample) {
    return "{'do':'verify','role':'%s','sample':'%s'}".formatted(role, sample);
  }

  private static Bench sample(Bench bench, int number) {
    return bench.read("{'do':'measure','sample':'S-%d'}".formatted(number), 20);
  }

  /** The last check; after one that failed come the results that it doubts. */
  private static Result check(Bench bench) {
    return bench.all(Result.class).stream()
        .filter(result -> result.verification().isPresent())
        .reduce((earlier, later) -> later)
        .orElseThrow();
  }

  private static List<String> revised(Bench bench) {
    return bench.all(Result.class).stream()
        .filter(result -> result.revision() > 1)
        .map(
            result ->
                "%s %d %s"
                    .formatted(
                        result.sample().orElseThrow().path("number").textValue(),
                        result.revision(),
                        String.join(" ", result.flags())))
        .toList();
  }

  /** Sample of 20 mg/L before; the spike adds 1000 * 0.5 / 50.5 = 9.90 mg/L to 19.80. */
  @ParameterizedTest
  @CsvSource({
    "check-standard, 20,    passed,     '',                  100",
    "check-standard, 18.2,  uncertain,  check-uncertain,     91",
    "check-standard, 16,    failed,     check-off,           80",
    "check-standard, 24,    failed,     check-off,           120",
    "blank,          0.2,   passed,     below-standards,     ",
    "blank,          0.5,   uncertain,  below-standards blank-uncertain, ",
    "blank,          2,     failed,     below-standards blank-high, ",
    "duplicate,      21,    passed,     '',                  4.878",
    "duplicate,      24.44, uncertain,  duplicate-uncertain, 19.98",
    "duplicate,      30,    failed,     duplicate-apart,     40",
    "spike,          29.703,passed,     '',                  100",
    "spike,          27.2,  uncertain,  spike-uncertain,     74.72",
    "spike,          24,    failed,     spike-low,           42.4",
    "spike,          36,    failed,     spike-high,          163.6"
  })
  void eachRoleIsJudgedByItsOwnFigure(
      String role, double found, String verdict, String flags, Double figure) {
    Bench bench = sample(bench(), 1);
    String instruction =
        switch (role) {
          case "check-standard" -> SECOND;
          case "blank" -> BLANK;
          default -> of(role, "S-1");
        };
    Result check = check(bench.read(instruction, found));
    Verification told = check.verification().orElseThrow();
    assertThat(told.role().word()).isEqualTo(role);
    assertThat(told.verdict()).isEqualTo(verdict);
    assertThat(String.join(" ", check.flags())).isEqualTo(flags);
    if (figure != null) {
      double percent =
          told.relativeDifferencePercent().orElse(told.recoveryPercent().orElse(Double.NaN));
      assertThat(percent).isCloseTo(figure, within(0.01));
    }
    boolean ofSample = role.equals("duplicate") || role.equals("spike");
    assertThat(check.sample().isPresent()).isEqualTo(ofSample);
    assertThat(told.against().isPresent()).isEqualTo(ofSample);
  }

  @Test
  void aSpikeThatIsSmallBesideTheSampleIsNotJudgedAndDoubtsNothing() {
    Bench bench = bench().read("{'do':'measure','sample':'S-1'}", 60);
    Result spike = bench.read(of("spike", "S-1"), 65).result();
    assertThat(spike.verification().orElseThrow().verdict()).isEqualTo("not judged");
    assertThat(spike.flags()).containsExactly("spike-too-small");
    assertThat(bench.all(Notice.class)).isEmpty();
  }

  @Test
  void aSampleNeverMeasuredHasNoDuplicateAndAnUnsettledOneNeither() {
    Bench bench = bench().tell("{\"do\":\"measure\",\"sample\":\"S-2\"}").restless(61);
    for (String number : List.of("S-1", "S-2")) {
      bench.tell(of("duplicate", number).replace('\'', '"'));
      assertThat(bench.answer().verdict()).isEqualTo(Answer.Verdict.REFUSED);
      assertThat(bench.notice().code()).isEqualTo("sample-not-measured");
      assertThat(bench.notice().text())
          .isEqualTo(
              "sample %s has no settled result of this probe in the last 28 days"
                  .formatted(number));
    }
  }

  @Test
  void aDuplicateIsComparedWithTheSampleAndNotWithACheckOfIt() {
    Bench bench =
        sample(bench(), 1).read(of("spike", "S-1"), 29.7).read(of("duplicate", "S-1"), 20);
    assertThat(bench.result().verification().orElseThrow().verdict()).isEqualTo("passed");
  }

  @Test
  void withoutALimitOrAnAmountABlankAndASpikeAreRefused() {
    Bench bench = sample(Bench.of(Setup.nitrate()).calibrate("low").calibrate("high"), 1);
    for (String check : List.of(BLANK, of("spike", "S-1"))) {
      bench.tell(check.replace('\'', '"'));
      assertThat(bench.notice().code()).isEqualTo("check-not-set");
    }
    Bench ranged =
        Bench.of(Setup.nitrate().with(Changes.range(1, 200))).calibrate("low").calibrate("high");
    Verification blank = ranged.read(BLANK, 0.3).result().verification().orElseThrow();
    assertThat(blank.verdict()).isEqualTo("passed");
    assertThat(blank.text())
        .isEqualTo("the blank holds less than 1.000 mg/L; accepted is up to 1.000");
  }

  @Test
  void aStandardOfAnotherSupplierChecksAndDoesNotCalibrate() {
    Bench bench = bench().tell("calibrate", "second");
    assertThat(bench.notice().code()).isEqualTo("standard-unknown");
  }

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
    bench.read(of("spike", "S-5"), 29.7);
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

  @Test
  void aBufferAndADuplicateInPhAreHeldAgainstTheirDifferences() {
    Bench bench =
        Bench.of(Changes.ph("phthalate", "phosphate"))
            .calibrate("phthalate")
            .calibrate("phosphate");
    bench.read("{'do':'measure','sample':'S-1'}", 6.5);
    Verification apart =
        check(bench.read(of("duplicate", "S-1"), 6.8)).verification().orElseThrow();
    assertThat(apart.verdict()).isEqualTo("failed");
    assertThat(apart.difference().orElseThrow()).isCloseTo(0.3, within(1e-6));
    assertThat(apart.relativeDifferencePercent()).isEmpty();
    assertThat(bench.tell(BLANK.replace('\'', '"')).notice().code()).isEqualTo("check-not-set");
  }
}
