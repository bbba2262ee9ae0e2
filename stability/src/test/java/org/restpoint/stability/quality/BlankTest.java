package org.restpoint.stability.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.quality.BlankLimit.Detection;
import org.restpoint.stability.quality.BlankLimit.HighestOf;
import org.restpoint.stability.quality.BlankLimit.ShareOfLowestSample;

/** Concentrations are invented, in mg/L. */
class BlankTest {

  private static final Blank BLANK = new Blank(new Detection(0.2));

  @Test
  void aBlankBelowTheDetectionLimitPasses() {
    assertThat(BLANK.judge(new Measured(0.1, 0.03)).verdict()).isEqualTo(Verdict.PASSED);
    assertThat(BLANK.judge(Measured.exactly(0)).reason()).isEmpty();
    assertThat(BLANK.judge(Measured.exactly(0.2)).verdict()).isEqualTo(Verdict.PASSED);
  }

  @Test
  void aBlankNearTheLimitIsUncertain() {
    Blank.Result result = BLANK.judge(new Measured(0.18, 0.03));
    assertThat(result.verdict()).isEqualTo(Verdict.UNCERTAIN);
    assertThat(result.withinLimits()).isTrue();
    assertThat(result.reason().orElseThrow().code()).isEqualTo("blank-uncertain");
  }

  @Test
  void aBlankAboveTheLimitFailsAndSaysWhereToLook() {
    assertThat(BLANK.judge(new Measured(0.4, 0.03)).reason())
        .contains(
            new Reason(
                "blank-high",
                "the blank holds 0.4000 ± 0.060 (k = 2); accepted is up to the detection limit"
                    + " 0.2000",
                "Look for the source: water, extractant, adjustor, filters, vessels, solution"
                    + " carried over by the electrode. Repeat the samples prepared with this"
                    + " blank."));
  }

  @Test
  void aBlankMayHoldAShareOfTheLowestSampleWhereThatIsMoreThanTheDetectionLimit() {
    BlankLimit share = new ShareOfLowestSample(ShareOfLowestSample.USUAL_PERCENT, 12);
    Blank blank = new Blank(new HighestOf(List.of(new Detection(0.2), share)));
    Blank.Result result = blank.judge(new Measured(0.4, 0.03));
    assertThat(result.limit()).isCloseTo(0.6, within(1e-12));
    assertThat(result.verdict()).isEqualTo(Verdict.PASSED);
    assertThat(blank.judge(Measured.exactly(1)).reason().orElseThrow().text())
        .endsWith("5.0 % of the lowest sample, 0.6000");
  }

  @Test
  void aLimitOfNothingIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> new Detection(0));
    assertThatIllegalArgumentException().isThrownBy(() -> new ShareOfLowestSample(0, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> new ShareOfLowestSample(101, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> new HighestOf(List.of()));
  }
}
