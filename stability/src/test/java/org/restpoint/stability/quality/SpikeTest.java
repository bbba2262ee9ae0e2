package org.restpoint.stability.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.hipparchus.stat.descriptive.moment.StandardDeviation;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.calibration.Reason;

/** Concentrations are invented, in mg/L, volumes in mL. */
class SpikeTest {

  private static final Spike SPIKE = Spike.usual();

  private static SpikeReadings readings(double unspiked, double spiked, double vs, double va) {
    return new SpikeReadings(
        Measured.exactly(unspiked),
        Measured.exactly(spiked),
        Measured.exactly(vs),
        Measured.exactly(1000),
        Measured.exactly(va));
  }

  @Property
  void aSpikeFoundWholeIsRecoveredWholeWhateverItsVolume(
      @ForAll @DoubleRange(min = 0, max = 100) double sample,
      @ForAll @DoubleRange(min = 10, max = 200) double vs,
      @ForAll @DoubleRange(min = 0.1, max = 50) double va,
      @ForAll @DoubleRange(min = 0.1, max = 2) double recovered) {
    double spiked = (sample * vs + recovered * 1000 * va) / (vs + va);
    Recovery recovery = SPIKE.judge(readings(sample, spiked, vs, va));
    // Rounding of the difference where the spike is a twentieth of the sample.
    assertThat(recovery.percent()).isCloseTo(100 * recovered, within(1e-8));
  }

  @Test
  void theSpikesVolumeDilutesTheSample() {
    // 50 mL of 20 mg/L and 5 mL of 1000 mg/L: 6000/55.
    Recovery recovery = SPIKE.judge(readings(20, 6000.0 / 55, 50, 5));
    assertThat(recovery.percent()).isCloseTo(100, within(1e-9));
    assertThat(recovery.verdict()).isEqualTo(Verdict.PASSED);
    assertThat(readings(20, 30, 50, 5).added()).isCloseTo(90.909, within(5e-4));
    assertThat(readings(20, 30, 50, 5).addedPercentOfSample()).isCloseTo(500, within(1e-9));
  }

  @Test
  void aSpikeTooSmallAgainstTheSampleIsNotJudged() {
    Recovery recovery = SPIKE.judge(readings(100, 110, 50, 1));
    assertThat(recovery.verdict()).isEqualTo(Verdict.NOT_JUDGED);
    assertThat(recovery.percent()).isCloseTo(61, within(1e-9));
    assertThat(recovery.reason())
        .contains(
            new Reason(
                "spike-too-small",
                "the spike added 20 % of what the sample brought; at least 25.0 % are needed to"
                    + " tell its recovery",
                "Add more, best as much as the sample holds, in a small volume of a strong"
                    + " solution."));
  }

  @Test
  void aSampleWithoutTheIonTakesNothingOff() {
    Recovery recovery = SPIKE.judge(readings(0, 18, 50, 1));
    assertThat(recovery.percent()).isCloseTo(91.8, within(1e-9));
    assertThat(recovery.verdict()).isEqualTo(Verdict.PASSED);
  }

  @Test
  void aSpikeLostOrFoundTwiceFailsAndSaysWhichWay() {
    assertThat(SPIKE.judge(readings(20, 25, 50, 1)).reason().orElseThrow().code())
        .isEqualTo("spike-low");
    Recovery high = SPIKE.judge(readings(20, 50, 50, 1));
    assertThat(high.verdict()).isEqualTo(Verdict.FAILED);
    assertThat(high.reason().orElseThrow().code()).isEqualTo("spike-high");
    assertThat(SPIKE.judge(readings(20, 19, 50, 1)).percent()).isNegative();
  }

  @Test
  void twoUncertainReadingsLeaveTheRecoveryUncertain() {
    SpikeReadings readings =
        new SpikeReadings(
            new Measured(20, 0.8),
            new Measured(36, 1.6),
            Measured.exactly(50),
            Measured.exactly(1000),
            Measured.exactly(1));
    Recovery recovery = SPIKE.judge(readings);
    assertThat(recovery.verdict()).isEqualTo(Verdict.UNCERTAIN);
    assertThat(recovery.reason().orElseThrow().text())
        .startsWith("the recovery is 83.6 ± 18.2 % (k = 2); accepted are 75.0 to 125.0 %");
  }

  /**
   * First order against a draw of 200 000: 1 % holds the draw's own 0.16 % and the second order.
   */
  @Test
  void theUncertaintyIsTheScatterOfSimulatedSpikes() {
    SpikeReadings stated =
        new SpikeReadings(
            new Measured(20, 0.4),
            new Measured(36, 0.6),
            new Measured(50, 0.5),
            new Measured(1000, 15),
            new Measured(1, 0.02));
    double expected = SPIKE.judge(stated).standardUncertaintyPercent();
    Random random = new Random(8);
    double[] percents = new double[200_000];
    for (int i = 0; i < percents.length; i++) {
      percents[i] =
          SPIKE
              .judge(
                  new SpikeReadings(
                      drawn(stated.unspiked(), random),
                      drawn(stated.spiked(), random),
                      drawn(stated.sampleVolume(), random),
                      drawn(stated.spike(), random),
                      drawn(stated.spikeVolume(), random)))
              .percent();
    }
    assertThat(new StandardDeviation().evaluate(percents) / expected).isCloseTo(1, within(0.01));
  }

  private static Measured drawn(Measured m, Random random) {
    return Measured.exactly(m.value() + m.standardUncertainty() * random.nextGaussian());
  }

  @Test
  void aSpikeOfNothingIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> readings(1, 1, 0, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> readings(1, 1, 1, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> readings(-1, 1, 1, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> new Spike(RecoveryLimits.OF_A_SPIKE, -1));
  }
}
