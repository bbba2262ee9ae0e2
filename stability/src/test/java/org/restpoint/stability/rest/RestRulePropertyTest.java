package org.restpoint.stability.rest;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.constraints.IntRange;

/** What must not matter to any rule. Potentials are in 1/1024 mV, which no sum of them rounds. */
class RestRulePropertyTest {

  private static final long MILLISECOND = 1_000_000L;

  @Provide
  Arbitrary<RestRule> rules() {
    RestRule count = new ConsecutiveRule(4, 0.1);
    RestRule span =
        new ConsecutiveRule(3, new Tolerance.ConcentrationPercent(1), Duration.ofSeconds(5));
    RestRule drift = new DriftRule(1.3, Duration.ofSeconds(6));
    return Arbitraries.of(
        count,
        span,
        drift,
        new ForecastRule(1),
        new AllOf(List.of(count, drift)),
        new AnyOf(List.of(drift, span, new AllOf(List.of(count, span)))));
  }

  /** Steps in 1/1024 mV, small and often none. */
  @Provide
  Arbitrary<List<Integer>> steps() {
    return Arbitraries.frequency(Tuple.of(6, 0), Tuple.of(3, 1), Tuple.of(3, -7), Tuple.of(1, 130))
        .list()
        .ofMaxSize(80);
  }

  /** Decisions with readings 0.4 to 1.5 s apart, and a digit for each. */
  private static String decisions(
      RestRule rule,
      List<Integer> steps,
      double slope,
      long shiftNanos,
      double shiftMillivolts,
      int sign) {
    RestDetector detector = rule.detector(slope);
    StringBuilder digits = new StringBuilder();
    long at = shiftNanos;
    int level = 0;
    for (int i = 0; i < steps.size(); i++) {
      at += (400 + i * 613 % 1100) * MILLISECOND;
      level += steps.get(i);
      boolean rest = detector.accept(at, sign * (level / 1024.0 + shiftMillivolts));
      digits.append(rest ? '1' : '0');
    }
    return digits.toString();
  }

  @Property
  void shiftingAllPotentialsChangesNoDecision(
      @ForAll("rules") RestRule rule,
      @ForAll("steps") List<Integer> steps,
      @ForAll @IntRange(min = -2000, max = 2000) int millivolts) {
    assertThat(decisions(rule, steps, 58, 0, millivolts, 1))
        .isEqualTo(decisions(rule, steps, 58, 0, 0, 1));
  }

  @Property
  void mirroringAllPotentialsChangesNoDecision(
      @ForAll("rules") RestRule rule, @ForAll("steps") List<Integer> steps) {
    assertThat(decisions(rule, steps, -58, 0, 0, -1))
        .isEqualTo(decisions(rule, steps, 58, 0, 0, 1));
  }

  @Property
  void shiftingTheTimeChangesNoDecision(
      @ForAll("rules") RestRule rule,
      @ForAll("steps") List<Integer> steps,
      @ForAll @IntRange int seconds) {
    assertThat(decisions(rule, steps, 58, seconds * 1_000L * MILLISECOND, 0, 1))
        .isEqualTo(decisions(rule, steps, 58, 0, 0, 1));
  }
}
