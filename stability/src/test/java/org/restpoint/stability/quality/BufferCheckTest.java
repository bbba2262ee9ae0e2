package org.restpoint.stability.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.restpoint.stability.buffer.PhBuffer;
import org.restpoint.stability.calibration.Reason;

class BufferCheckTest {

  private static BufferCheck.Result judged(double found, double u) {
    return BufferCheck.usual().judge(new Measured(found, u), new Measured(6.865, 0.003));
  }

  @Test
  void aBufferFoundAtItsPhPasses() {
    BufferCheck.Result result = judged(6.885, 0.004);

    assertThat(result.verdict()).isEqualTo(Verdict.PASSED);
    assertThat(result.withinLimits()).isTrue();
    assertThat(result.reason()).isEmpty();
    assertThat(result.difference()).isCloseTo(0.02, within(1e-12));
    assertThat(result.standardUncertainty()).isCloseTo(0.005, within(1e-12));
  }

  @Test
  void oneWhoseUncertaintyReachesOverTheLimitIsUncertainWhateverTheFigureSays() {
    assertThat(judged(6.91, 0.004).verdict()).isEqualTo(Verdict.UNCERTAIN);
    assertThat(judged(6.91, 0.004).withinLimits()).isTrue();
    assertThat(judged(6.92, 0.004).verdict()).isEqualTo(Verdict.UNCERTAIN);
    assertThat(judged(6.92, 0.004).withinLimits()).isFalse();
    assertThat(judged(6.92, 0.004).reason())
        .map(Reason::text)
        .contains(
            "the buffer is found +0.055 ± 0.010 pH (k = 2) off; accepted are ± 0.05: a limit lies"
                + " within the uncertainty");
  }

  @Test
  void oneThatIsOffFailsOnEitherSide() {
    assertThat(judged(6.80, 0.004).verdict()).isEqualTo(Verdict.FAILED);
    assertThat(judged(6.93, 0.004).reason()).map(Reason::code).contains("buffer-off");
  }

  /**
   * 0.01 pH is the difference that 15 K make of phosphate: a buffer is judged at its temperature.
   */
  @Test
  void theSameReadingFailsAgainstTheWrongTemperaturesValue() {
    double cold = PhBuffer.named("phosphate").orElseThrow().ph(0).orElseThrow();
    Measured found = new Measured(cold, 0.005);

    assertThat(BufferCheck.usual().judge(found, new Measured(cold, 0)).verdict())
        .isEqualTo(Verdict.PASSED);
    assertThat(BufferCheck.usual().judge(found, new Measured(6.865, 0)).verdict())
        .isEqualTo(Verdict.FAILED);
  }

  @Test
  void aLimitOfNothingIsRefused() {
    assertThatThrownBy(() -> new BufferCheck(0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a buffer may be off by more than 0 pH, not 0.0");
  }
}
