package org.restpoint.stability.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.restpoint.stability.calibration.Reason;

/** Concentrations are invented, in mg/L. */
class CheckStandardTest {

  private static final CheckStandard CHECK = CheckStandard.usual();

  private static Recovery judged(double found, double uncertainty) {
    return CHECK.judge(new Measured(found, uncertainty), Measured.exactly(20));
  }

  @Test
  void aRecoveryWellInsideTheLimitsPasses() {
    Recovery recovery = judged(20.4, 0.3);
    assertThat(recovery.percent()).isCloseTo(102, within(1e-12));
    assertThat(recovery.standardUncertaintyPercent()).isCloseTo(1.5, within(1e-12));
    assertThat(recovery.verdict()).isEqualTo(Verdict.PASSED);
    assertThat(recovery.withinLimits()).isTrue();
    assertThat(recovery.reason()).isEmpty();
  }

  @Test
  void aLimitWithinTheExpandedUncertaintyIsUncertainOnEitherSideOfIt() {
    assertThat(judged(21.6, 0.3).verdict()).isEqualTo(Verdict.UNCERTAIN);
    assertThat(judged(21.6, 0.3).withinLimits()).isTrue();
    assertThat(judged(22.4, 0.3).verdict()).isEqualTo(Verdict.UNCERTAIN);
    assertThat(judged(22.4, 0.3).withinLimits()).isFalse();
    assertThat(judged(22.4, 0.3).reason())
        .contains(
            new Reason(
                "check-uncertain",
                "the recovery is 112.0 ± 3.0 % (k = 2); accepted are 90.0 to 110.0 %: a limit lies"
                    + " within the uncertainty",
                "Read the check standard again in a fresh portion; if the uncertainty stays as"
                    + " wide, calibrate with more or better known standards."));
  }

  @Test
  void anUncertaintyWiderThanTheLimitsTellsNothing() {
    assertThat(judged(20, 1.5).verdict()).isEqualTo(Verdict.UNCERTAIN);
  }

  @Test
  void aRecoveryClearlyBeyondALimitFailsAndSaysWhichWay() {
    assertThat(judged(17, 0.3).verdict()).isEqualTo(Verdict.FAILED);
    assertThat(judged(17, 0.3).reason().orElseThrow().code()).isEqualTo("check-low");
    Reason high = judged(23, 0.3).reason().orElseThrow();
    assertThat(high.code()).isEqualTo("check-high");
    assertThat(high.text())
        .isEqualTo("the recovery is 115.0 ± 3.0 % (k = 2); accepted are 90.0 to 110.0 %");
    assertThat(high.remedy()).contains("calibrate anew and repeat the samples");
  }

  @Test
  void theLimitsThemselvesAreAccepted() {
    assertThat(judged(18, 0).verdict()).isEqualTo(Verdict.PASSED);
    assertThat(judged(22, 0).verdict()).isEqualTo(Verdict.PASSED);
    assertThat(judged(22.01, 0).verdict()).isEqualTo(Verdict.FAILED);
    // 0.1 · 3 / 0.3 is not 1 in binary, and 1.1 · 0.3 not 0.33.
    assertThat(CHECK.judge(Measured.exactly(1.1 * 0.3), Measured.exactly(0.3)).verdict())
        .isEqualTo(Verdict.PASSED);
  }

  @Test
  void theStandardsOwnUncertaintyCounts() {
    Recovery recovery = CHECK.judge(new Measured(19, 0.4), new Measured(20, 0.2));
    // 95 · √((0.4/19)² + (0.2/20)²)
    assertThat(recovery.standardUncertaintyPercent()).isCloseTo(2.2142, within(5e-5));
  }

  @Test
  void nothingFoundIsNoRecovery() {
    Recovery recovery = judged(0, 0.1);
    assertThat(recovery.percent()).isZero();
    assertThat(recovery.standardUncertaintyPercent()).isCloseTo(0.5, within(1e-12));
    assertThat(recovery.verdict()).isEqualTo(Verdict.FAILED);
  }

  @Test
  void aCheckStandardOfNothingIsRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> CHECK.judge(Measured.exactly(1), Measured.exactly(0)))
        .withMessageContaining("above zero, not 0.0");
    assertThatIllegalArgumentException().isThrownBy(() -> new RecoveryLimits(101, 110));
    assertThatIllegalArgumentException().isThrownBy(() -> new RecoveryLimits(90, 100));
    assertThatIllegalArgumentException().isThrownBy(() -> new Measured(Double.NaN, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> new Measured(1, -0.1));
  }
}
