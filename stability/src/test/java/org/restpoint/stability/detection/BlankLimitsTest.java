package org.restpoint.stability.detection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

class BlankLimitsTest {

  /** Degrees of freedom of a standard deviation known for certain. */
  private static final double KNOWN = Double.POSITIVE_INFINITY;

  @Test
  void aKnownStandardDeviationGivesCurriesFactors() {
    // L. A. Currie, Anal. Chem. 40 (1968) 586, table II: 2.33, 4.65 and 14.1 σ for a sample with
    // one blank, 1.64, 3.29 and 10 σ for a well-known blank.
    BlankLimits paired = new BlankLimits(0, 1, 1, KNOWN, 0.05);
    assertThat(paired.critical()).isCloseTo(2.33, within(0.005));
    assertThat(paired.detection()).isCloseTo(4.65, within(0.005));
    assertThat(paired.quantification()).isCloseTo(14.1, within(0.05));
    BlankLimits wellKnown = new BlankLimits(0, 1, 1_000_000, KNOWN, 0.05);
    assertThat(wellKnown.critical()).isCloseTo(1.64, within(0.005));
    assertThat(wellKnown.detection()).isCloseTo(3.29, within(0.005));
    assertThat(wellKnown.quantification()).isCloseTo(10, within(0.005));
  }

  @Test
  void fiveBlanksUseStudentsFactorOfFour() {
    // Mean 0, s² = 10/4; t(0.95, 4) = 2.132 of the tables.
    BlankLimits limits =
        BlankLimits.of(new double[] {-2, -1, 0, 1, 2}, BlankLimits.USUAL_SIGNIFICANCE)
            .orElseThrow();
    double s0 = Math.sqrt(2.5 * 1.2);
    assertThat(limits.mean()).isZero();
    assertThat(limits.critical()).isCloseTo(2.132 * s0, within(0.0005 * s0));
    assertThat(limits.detection()).isEqualTo(2 * limits.critical());
    assertThat(limits.quantification()).isCloseTo(10 * s0, within(1e-12));
    assertThat(limits.criticalReading()).isEqualTo(limits.critical());
  }

  @Test
  void potentialsOfBlanksAreReadBackFirst() {
    double[] millivolts = {400, 401, 399, 400.5};
    BlankLimits limits =
        BlankLimits.ofPotentials(millivolts, mV -> Math.pow(10, (mV - 80) / -58) - 4e-6, 0.05)
            .orElseThrow();
    double[] concentrations = new double[4];
    for (int i = 0; i < 4; i++) {
      concentrations[i] = Math.pow(10, (millivolts[i] - 80) / -58) - 4e-6;
    }
    assertThat(limits).isEqualTo(BlankLimits.of(concentrations, 0.05).orElseThrow());
    assertThat(limits.mean()).isNegative();
  }

  @Test
  void oneSampleInTwentyWithoutTheIonReadsAboveTheCriticalLevel() {
    Random random = new Random(99);
    int above = 0;
    int missed = 0;
    int runs = 100_000;
    for (int run = 0; run < runs; run++) {
      double[] blanks = random.doubles(5).map(any -> 3 + random.nextGaussian()).toArray();
      BlankLimits limits = BlankLimits.of(blanks, 0.05).orElseThrow();
      above += 3 + random.nextGaussian() > limits.criticalReading() ? 1 : 0;
      double holding = 3 + 2 * 2.132 * Math.sqrt(1.2);
      missed += holding + random.nextGaussian() < limits.criticalReading() ? 1 : 0;
    }
    // √(0.05·0.95/100000) = 0.0007; three of them.
    assertThat((double) above / runs).isCloseTo(0.05, within(0.0021));
    // 2t stands for the noncentral t, 4.07 for 2·2.132 = 4.26 at ν = 4: a little on the safe side.
    assertThat((double) missed / runs).isBetween(0.03, 0.05);
  }

  @Test
  void oneBlankHasNoLimitsAndBlanksAlikeHaveNone() {
    assertThat(BlankLimits.of(new double[] {1}, 0.05)).isEmpty();
    assertThat(BlankLimits.of(new double[] {1, 1, 1}, 0.05).orElseThrow().critical()).isZero();
    assertThatThrownBy(() -> BlankLimits.of(new double[] {1, Double.NaN}, 0.05))
        .hasMessageContaining("finite");
    assertThatThrownBy(() -> new BlankLimits(0, -1, 1, 1, 0.05)).hasMessageContaining("0 or above");
    assertThatThrownBy(() -> new BlankLimits(0, 1, 0, 1, 0.05)).hasMessageContaining("one blank");
    assertThatThrownBy(() -> new BlankLimits(0, 1, 1, 1, 0.5)).hasMessageContaining("below 0.5");
  }

  @Test
  void theRulesFactorsMakeTheMethodDetectionLimit() {
    Published table = Published.table("method-detection-limit");
    double[] replicates = table.numbers("replicates");
    double[] t = table.numbers("studentsT");
    for (int i = 0; i < t.length; i++) {
      MethodDetectionLimit limit = new MethodDetectionLimit((int) replicates[i], 0, 1);
      assertThat(limit.concentration()).isCloseTo(t[i], within(0.0005 + 1e-9));
    }
  }

  @Test
  void sevenReplicatesHaveTheRulesConfidenceLimits() {
    MethodDetectionLimit limit = new MethodDetectionLimit(7, 0, 1);
    double margin = limit.concentration();
    // 95 % on either side; revision 1.11 of 40 CFR part 136, appendix B has 97.5 % (from memory).
    assertThat(limit.lowerConfidence(0.90) / margin).isCloseTo(0.69, within(0.005));
    assertThat(limit.upperConfidence(0.90) / margin).isCloseTo(1.92, within(0.005));
    assertThat(limit.lowerConfidence(0.95) / margin).isCloseTo(0.64, within(0.005));
    assertThat(limit.upperConfidence(0.95) / margin).isCloseTo(2.20, within(0.005));
  }

  @Test
  void blanksAddTheirMeanAndSpikesDoNot() {
    double[] seven = {4, 5, 6, 4, 5, 6, 5};
    double margin = 3.143 * Math.sqrt(4 / 6.0);
    assertThat(MethodDetectionLimit.ofSpiked(seven).orElseThrow().concentration())
        .isCloseTo(margin, within(0.0005));
    assertThat(MethodDetectionLimit.ofBlanks(seven).orElseThrow().concentration())
        .isCloseTo(5 + margin, within(0.0005));
    double[] below = {-4, -5, -6, -4, -5, -6, -5};
    assertThat(MethodDetectionLimit.ofBlanks(below).orElseThrow().concentration())
        .isCloseTo(margin, within(0.0005));
  }

  @Test
  void sixReplicatesAreTooFew() {
    assertThat(MethodDetectionLimit.ofSpiked(new double[] {1, 2, 3, 4, 5, 6})).isEmpty();
    assertThat(MethodDetectionLimit.ofBlanks(new double[] {1})).isEmpty();
    assertThatThrownBy(() -> new MethodDetectionLimit(6, 0, 1))
        .hasMessageContaining("7 replicates or more");
  }
}
