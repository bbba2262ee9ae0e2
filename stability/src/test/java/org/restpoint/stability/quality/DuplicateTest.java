package org.restpoint.stability.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.quality.Duplicate.Rule;

/** Concentrations are invented, in mg/L. */
class DuplicateTest {

  private static final Duplicate FREE = Duplicate.usual(OptionalDouble.empty());

  @Test
  void twoCloseResultsPass() {
    Duplicate.Result result = FREE.judge(new Measured(10, 0.2), new Measured(10.6, 0.2));
    // 100 · 0.6/10.3; 100/10.3² · √((10.6 · 0.2)² + (10 · 0.2)²)
    assertThat(result.percent().orElseThrow()).isCloseTo(5.825, within(5e-4));
    assertThat(result.percentUncertainty().orElseThrow()).isCloseTo(2.7472, within(5e-5));
    assertThat(result.differenceUncertainty()).isCloseTo(0.28284, within(5e-6));
    assertThat(result.rule()).isEqualTo(Rule.RELATIVE);
    assertThat(result.verdict()).isEqualTo(Verdict.PASSED);
  }

  @Test
  void twoResultsFarApartFail() {
    assertThat(FREE.judge(new Measured(10, 0.2), new Measured(14, 0.2)).reason())
        .contains(
            new Reason(
                "duplicate-apart",
                "the two results differ by 33.3 ± 4.8 % (k = 2) of their mean; accepted are up to"
                    + " 20.0 %",
                "Mix the sample better and take both portions again; if they stay apart, look"
                    + " whether the electrode comes to rest and whether the sample settles out."));
  }

  @Test
  void aDifferenceNearTheLimitIsUncertain() {
    Duplicate.Result result = FREE.judge(new Measured(10, 0.3), new Measured(12, 0.3));
    assertThat(result.withinLimits()).isTrue();
    assertThat(result.verdict()).isEqualTo(Verdict.UNCERTAIN);
    assertThat(result.reason().orElseThrow().code()).isEqualTo("duplicate-uncertain");
  }

  @Test
  void nearTheReportingLimitTheDifferenceItselfCounts() {
    Duplicate duplicate = Duplicate.usual(OptionalDouble.of(0.5));
    Duplicate.Result result = duplicate.judge(Measured.exactly(0.3), Measured.exactly(0.6));
    assertThat(result.rule()).isEqualTo(Rule.ABSOLUTE);
    assertThat(result.percent().orElseThrow()).isCloseTo(66.667, within(5e-4));
    assertThat(result.verdict()).isEqualTo(Verdict.PASSED);
    Duplicate.Result apart = duplicate.judge(Measured.exactly(0.3), Measured.exactly(3));
    assertThat(apart.verdict()).isEqualTo(Verdict.FAILED);
    assertThat(apart.reason().orElseThrow().text())
        .isEqualTo(
            "near the reporting limit, the two results differ by 2.700 ± 0.0 (k = 2); accepted is"
                + " up to the reporting limit, 0.5000");
    assertThat(duplicate.judge(Measured.exactly(2.5), Measured.exactly(2.6)).rule())
        .isEqualTo(Rule.RELATIVE);
  }

  @Test
  void twoResultsOfNothingCanOnlyBeComparedWithAReportingLimit() {
    Measured none = Measured.exactly(0);
    assertThat(FREE.judge(none, none).verdict()).isEqualTo(Verdict.NOT_JUDGED);
    assertThat(FREE.judge(none, none).reason().orElseThrow().code()).isEqualTo("duplicate-zero");
    Duplicate.Result result = Duplicate.usual(OptionalDouble.of(0.5)).judge(none, none);
    assertThat(result.verdict()).isEqualTo(Verdict.PASSED);
    assertThat(result.percent()).isEmpty();
  }

  @Test
  void whatIsNotAResultOrALimitIsRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FREE.judge(Measured.exactly(-1), Measured.exactly(1)));
    assertThatIllegalArgumentException().isThrownBy(() -> new Duplicate(0, OptionalDouble.empty()));
    assertThatIllegalArgumentException().isThrownBy(() -> new Duplicate(20, OptionalDouble.of(0)));
  }

  @Property
  void neitherTheOrderNorTheUnitOfTheResultsMatters(
      @ForAll @DoubleRange(min = 0.01, max = 1000) double a,
      @ForAll @DoubleRange(min = 0.01, max = 1000) double b,
      @ForAll @DoubleRange(min = 0.01, max = 1000) double unit) {
    Duplicate.Result one = FREE.judge(new Measured(a, 0.01 * a), new Measured(b, 0.02 * b));
    Duplicate.Result turned =
        FREE.judge(
            new Measured(unit * b, 0.02 * unit * b), new Measured(unit * a, 0.01 * unit * a));
    assertThat(turned.percent().orElseThrow()).isCloseTo(one.percent().orElseThrow(), within(1e-9));
    assertThat(turned.percentUncertainty().orElseThrow())
        .isCloseTo(one.percentUncertainty().orElseThrow(), within(1e-9));
  }

  /** The range that one result leaves to the other: x·(200 − L)/(200 + L) to the inverse. */
  @Property
  void aResultAtTheEndOfTheRangeLeftToItDiffersByTheLimit(
      @ForAll @DoubleRange(min = 0.01, max = 1000) double a,
      @ForAll @DoubleRange(min = 1, max = 100) double limit) {
    double ratio = (200 + limit) / (200 - limit);
    for (double b : new double[] {a * ratio, a / ratio}) {
      Duplicate.Result result = FREE.judge(Measured.exactly(a), Measured.exactly(b));
      assertThat(result.percent().orElseThrow()).isCloseTo(limit, within(1e-9));
    }
  }
}
