package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.restpoint.acquisition.probe.CheckedBench.BLANK;
import static org.restpoint.acquisition.probe.CheckedBench.SECOND;
import static org.restpoint.acquisition.probe.CheckedBench.bench;
import static org.restpoint.acquisition.probe.CheckedBench.check;
import static org.restpoint.acquisition.probe.CheckedBench.sample;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Verification;

/** Checks at the bench: what each is judged by. */
class ChecksTest {

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
          default -> CheckedBench.of(role, "S-1");
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
    Result spike = bench.read(CheckedBench.of("spike", "S-1"), 65).result();
    assertThat(spike.verification().orElseThrow().verdict()).isEqualTo("not judged");
    assertThat(spike.flags()).containsExactly("spike-too-small");
    assertThat(bench.all(Notice.class)).isEmpty();
  }

  @Test
  void aSampleNeverMeasuredHasNoDuplicateAndAnUnsettledOneNeither() {
    Bench bench = bench().tell("{\"do\":\"measure\",\"sample\":\"S-2\"}").restless(61);
    for (String number : List.of("S-1", "S-2")) {
      bench.tell(CheckedBench.of("duplicate", number).replace('\'', '"'));
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
        sample(bench(), 1)
            .read(CheckedBench.of("spike", "S-1"), 29.7)
            .read(CheckedBench.of("duplicate", "S-1"), 20);
    assertThat(bench.result().verification().orElseThrow().verdict()).isEqualTo("passed");
  }

  @Test
  void withoutALimitOrAnAmountABlankAndASpikeAreRefused() {
    Bench bench = sample(Bench.of(Setup.nitrate()).calibrate("low").calibrate("high"), 1);
    for (String check : List.of(BLANK, CheckedBench.of("spike", "S-1"))) {
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
  void aBufferAndADuplicateInPhAreHeldAgainstTheirDifferences() {
    Bench bench =
        Bench.of(Changes.ph("phthalate", "phosphate"))
            .calibrate("phthalate")
            .calibrate("phosphate");
    bench.read("{'do':'measure','sample':'S-1'}", 6.5);
    Verification apart =
        check(bench.read(CheckedBench.of("duplicate", "S-1"), 6.8)).verification().orElseThrow();
    assertThat(apart.verdict()).isEqualTo("failed");
    assertThat(apart.difference().orElseThrow()).isCloseTo(0.3, within(1e-6));
    assertThat(apart.relativeDifferencePercent()).isEmpty();
    assertThat(bench.tell(BLANK.replace('\'', '"')).notice().code()).isEqualTo("check-not-set");
  }

  @Test
  void aCheckStandardThatIsNotNamedIsTheOneOfTheStationFile() {
    Verification told = bench().read("{'do':'verify'}", 20).result().verification().orElseThrow();
    assertThat(told.standard()).contains("second");
    Bench unnamed = Bench.of(Setup.nitrate()).calibrate("low").calibrate("high");
    assertThat(unnamed.tell("{\"do\":\"verify\"}").notice().code()).isEqualTo("check-not-set");
    assertThat(unnamed.notice().remedy()).contains("check-standard: { standard: low }");
    assertThat(bench().tell("verify", "third").notice().text())
        .isEqualTo("standard third is not one of this probe's standards: low, mid, high, second");
  }
}
