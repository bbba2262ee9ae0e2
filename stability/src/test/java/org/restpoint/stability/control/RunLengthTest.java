package org.restpoint.stability.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;

/** How seldom a process in control gives a signal. Values are in σ from the mean. */
class RunLengthTest {

  private static final ControlLimits UNIT = new ControlLimits(20, 0, ControlLimits.D2);
  private static final double[] ZONES = {-3.5, -2.5, -1.5, -0.5, 0.5, 1.5, 2.5, 3.5};
  private static final NormalDistribution NORMAL = new NormalDistribution();

  /**
   * The average run length as the mean time to leave a Markov chain, whose states are what the
   * rules can still see of the last seven values. The chart itself makes each step.
   */
  private static double averageRunLength(Set<RunRule> rules) {
    Map<List<Double>, Integer> states = new LinkedHashMap<>();
    List<int[]> steps = new ArrayList<>();
    Deque<List<Double>> open = new ArrayDeque<>();
    states.put(List.of(), 0);
    open.add(List.of());
    while (!open.isEmpty()) {
      Watching chart = new Watching(UNIT, rules, List.of(), open.remove(), List.of());
      int[] next = new int[ZONES.length];
      for (int zone = 0; zone < ZONES.length; zone++) {
        Watching after = chart.accept(ZONES[zone]);
        next[zone] = -1;
        if (after.signals().isEmpty()) {
          List<Double> state = visible(after.recent());
          Integer known = states.putIfAbsent(state, states.size());
          if (known == null) {
            open.add(state);
          }
          next[zone] = states.getOrDefault(state, -1);
        }
      }
      steps.add(next);
    }
    return meanTimeToLeave(steps);
  }

  /** Zones that no rule can tell apart any more become one. */
  private static List<Double> visible(List<Double> recent) {
    List<Double> state = new ArrayList<>();
    for (int back = Math.min(7, recent.size()); back >= 1; back--) {
      double value = recent.get(recent.size() - back);
      double farthest = back <= 2 ? 2.5 : back <= 4 ? 1.5 : 0.5;
      state.add(Math.copySign(Math.min(Math.abs(value), farthest), value));
    }
    // A chart and its mirror image leave as soon as each other.
    return state.get(state.size() - 1) < 0 ? state.stream().map(value -> -value).toList() : state;
  }

  private static double meanTimeToLeave(List<int[]> steps) {
    double[] chances = new double[ZONES.length];
    for (int zone = 0; zone < ZONES.length; zone++) {
      double low = zone == 0 ? Double.NEGATIVE_INFINITY : ZONES[zone] - 0.5;
      double high = zone == ZONES.length - 1 ? Double.POSITIVE_INFINITY : ZONES[zone] + 0.5;
      chances[zone] = NORMAL.probability(low, high);
    }
    double[] mean = new double[steps.size()];
    double change = 1;
    // What is left is at most the change times the mean itself, 370 at most.
    while (change > 1e-6) {
      change = 0;
      for (int state = mean.length - 1; state >= 0; state--) {
        double sum = 1;
        for (int zone = 0; zone < ZONES.length; zone++) {
          int next = steps.get(state)[zone];
          sum += next < 0 ? 0 : chances[zone] * mean[next];
        }
        change = Math.max(change, Math.abs(sum - mean[state]));
        mean[state] = sum;
      }
    }
    return mean[0];
  }

  @Test
  void theRulesOfWesternElectricHaveTheirPublishedRunLengths() {
    RunRule[] numbered = RunRule.WESTERN_ELECTRIC.toArray(RunRule[]::new);
    Published table = Published.table("run-length");
    double[] published = table.numbers("runLength");
    for (int row = 0; row < published.length; row++) {
      EnumSet<RunRule> rules = EnumSet.noneOf(RunRule.class);
      for (char number : table.texts("rules").get(row).toCharArray()) {
        rules.add(numbered[number - '1']);
      }
      assertThat(averageRunLength(rules))
          .as("rules %s", rules)
          .isCloseTo(published[row], within(0.006));
    }
  }

  /**
   * L. S. Nelson, J. Quality Technology 16 (1984) 237 and 17 (1985) 114, as quoted in the manual of
   * a statistical package (seen): in control, each test is positive by chance less than five times
   * in a thousand. The chance of each follows from the normal distribution and from counting
   * orders.
   */
  @Test
  void eachTestOfNelsonIsPositiveByChanceLessThanFiveTimesInAThousand() {
    double p1 = NORMAL.cumulativeProbability(-1);
    double p2 = NORMAL.cumulativeProbability(-2);
    Map<RunRule, Double> chances = new EnumMap<>(RunRule.class);
    chances.put(RunRule.BEYOND_THREE_SIGMA, 2 * NORMAL.cumulativeProbability(-3));
    chances.put(RunRule.NINE_ON_ONE_SIDE, 2 * Math.pow(0.5, 9));
    chances.put(RunRule.SIX_RISING_OR_FALLING, 2.0 / 720);
    // Of the 14! orders of fourteen values, twice 199 360 981 go up and down by turns (Andre,
    // 1879).
    chances.put(RunRule.FOURTEEN_ALTERNATING, 2 * 199_360_981 / 87_178_291_200.0);
    chances.put(RunRule.TWO_OF_THREE_BEYOND_TWO_SIGMA, 2 * p2 * (1 - (1 - p2) * (1 - p2)));
    chances.put(
        RunRule.FOUR_OF_FIVE_BEYOND_ONE_SIGMA,
        2 * p1 * (4 * p1 * p1 * p1 * (1 - p1) + Math.pow(p1, 4)));
    chances.put(RunRule.FIFTEEN_WITHIN_ONE_SIGMA, Math.pow(1 - 2 * p1, 15));
    chances.put(RunRule.EIGHT_BEYOND_ONE_SIGMA, Math.pow(2 * p1, 8) - 2 * Math.pow(p1, 8));
    assertThat(chances.keySet()).isEqualTo(RunRule.NELSON);
    Map<RunRule, Integer> counts = new EnumMap<>(RunRule.class);
    Random random = new Random(1984);
    Watching chart = new Watching(UNIT, RunRule.NELSON, List.of(), List.of(), List.of());
    int values = 150_000;
    for (int i = 0; i < values; i++) {
      chart = chart.accept(random.nextGaussian());
      chart.signals().forEach(signal -> counts.merge(signal.rule(), 1, Integer::sum));
    }
    chances.forEach(
        (rule, chance) -> {
          assertThat(chance).as("%s", rule).isLessThan(0.005);
          // Five standard errors, three times wider since signals come in a row.
          double error = 5 * Math.sqrt(3 * chance / values);
          assertThat((double) counts.getOrDefault(rule, 0) / values)
              .as("%s", rule)
              .isCloseTo(chance, within(error));
        });
  }

  @Test
  void aShiftOfTwoSigmaIsSeenWithinAFewValues() {
    Random random = new Random(5);
    double steps = 0;
    int runs = 2000;
    for (int run = 0; run < runs; run++) {
      Watching chart =
          new Watching(UNIT, RunRule.WESTERN_ELECTRIC, List.of(), List.of(), List.of());
      do {
        chart = chart.accept(2 + random.nextGaussian());
        steps++;
      } while (chart.signals().isEmpty());
    }
    assertThat(steps / runs).isBetween(2.0, 4.0);
  }
}
