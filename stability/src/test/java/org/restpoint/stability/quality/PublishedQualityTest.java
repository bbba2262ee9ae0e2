package org.restpoint.stability.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

/** Worked figures of others, each to the last digit it prints. */
class PublishedQualityTest {

  private static final Published FIGURES = Published.table("check-figures");

  private static double figure(String column, String kind) {
    return FIGURES.numbers(column)[FIGURES.texts("kind").indexOf(kind)];
  }

  @Test
  void theRelativePercentDifferenceOfTheWorkedPair() {
    Duplicate.Result result =
        Duplicate.usual(OptionalDouble.empty())
            .judge(Measured.exactly(figure("a", "rpd")), Measured.exactly(figure("b", "rpd")));
    assertThat(result.percent().orElseThrow()).isCloseTo(figure("percent", "rpd"), within(0.005));
    assertThat(result.verdict()).isEqualTo(Verdict.PASSED);
  }

  @Test
  void theRecoveryOfTheWorkedStandard() {
    Recovery recovery =
        CheckStandard.usual()
            .judge(
                Measured.exactly(figure("a", "recovery")),
                Measured.exactly(figure("b", "recovery")));
    assertThat(recovery.percent()).isCloseTo(figure("percent", "recovery"), within(0.05));
  }

  @Test
  void aSpikeOfNoVolumeIsTheFormulaWithoutDilution() {
    // The spike K in a volume of a billionth of the sample's dilutes nothing that could be printed.
    SpikeReadings readings =
        new SpikeReadings(
            Measured.exactly(figure("b", "spike")),
            Measured.exactly(figure("a", "spike")),
            Measured.exactly(1),
            Measured.exactly(1e9 * figure("k", "spike")),
            Measured.exactly(1e-9));
    assertThat(new Spike(RecoveryLimits.OF_A_SPIKE, 20).judge(readings).percent())
        .isCloseTo(figure("percent", "spike"), within(0.05));
  }

  @Test
  void theTextbooksStandardAdditionIsAWholeRecoveryOfItsAnswer() {
    Published problem = Published.table("standard-addition-problem");
    double answer = problem.numbers("samplePpm")[0];
    double perPpm = problem.numbers("signal")[0] / answer;
    Measured spiked = Measured.exactly(problem.numbers("spikedSignal")[0] / perPpm);
    SpikeReadings readings =
        new SpikeReadings(
            Measured.exactly(answer),
            spiked,
            Measured.exactly(problem.numbers("sampleMillilitres")[0]),
            Measured.exactly(problem.numbers("spikePpm")[0]),
            Measured.exactly(problem.numbers("spikeMillilitres")[0]));
    // Half a digit of 0.191 is 0.26 %, and R is proportional to the answer.
    assertThat(Spike.usual().judge(readings).percent()).isCloseTo(100, within(0.27));
    // Without the dilution it would be 98.2 %: 0.1926/0.1961.
    double undiluted = 100 * (spiked.value() - answer) / readings.added();
    assertThat(undiluted).isLessThan(98.5);
  }
}
