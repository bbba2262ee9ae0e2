package org.restpoint.stability.settle1;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.restpoint.stability.rest.ConsecutiveRule;

/**
 * All settings of so many readings alike: n of 5 to 300, within 0.1 to 2 mV. For one n the window
 * slides once over a curve; a narrower tolerance is never met before a wider one, so all are
 * decided on the way.
 */
final class ConsecutiveSweep {

  private static final int[] READINGS = IntStream.rangeClosed(1, 60).map(i -> 5 * i).toArray();

  /** In hundredths of a mV, ascending. */
  private static final int[] WITHIN = {
    10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160, 170, 180, 190,
    200
  };

  private ConsecutiveSweep() {}

  /** On the readings as they are. */
  static List<Swept> raw(List<Curve> curves) {
    return over(ExactTrace.of(curves), false);
  }

  /** On the medians of three readings. */
  static List<Swept> onMediansOfThree(List<Curve> curves) {
    return over(ExactTrace.mediansOfThree(curves), true);
  }

  private static List<Swept> over(List<ExactTrace> traces, boolean medians) {
    return Arrays.stream(READINGS)
        .parallel()
        .mapToObj(n -> over(traces, n, medians))
        .flatMap(List::stream)
        .toList();
  }

  private static List<Swept> over(List<ExactTrace> traces, int n, boolean medians) {
    Tally[] tallies = new Tally[WITHIN.length];
    Arrays.setAll(tallies, i -> new Tally());
    Extreme highest = new Extreme(n, 1);
    Extreme lowest = new Extreme(n, -1);
    for (ExactTrace trace : traces) {
      highest.clear();
      lowest.clear();
      int undecided = WITHIN.length;
      for (int t = trace.from(); t < trace.to() && undecided > 0; t++) {
        highest.take(t, trace.at(t));
        lowest.take(t, trace.at(t));
        if (t - trace.from() + 1 < n) {
          continue;
        }
        int range = highest.value() - lowest.value();
        while (undecided > 0 && range <= WITHIN[undecided - 1]) {
          undecided--;
          double mean = (double) trace.sum(t, n) / n / ExactTrace.HUNDREDTHS;
          tallies[undecided].settled(trace.curve(), t, mean);
        }
      }
      for (int i = 0; i < undecided; i++) {
        tallies[i].never();
      }
    }
    List<Swept> swept = new ArrayList<>();
    for (int i = 0; i < WITHIN.length; i++) {
      double within = WITHIN[i] / (double) ExactTrace.HUNDREDTHS;
      Candidate rule = Candidate.of(new ConsecutiveRule(n, within));
      swept.add(tallies[i].swept(medians ? rule.onMediansOfThree() : rule));
    }
    return swept;
  }

  /** The largest of the last n values, or the smallest: those that no later one outdoes. */
  private static final class Extreme {

    private final int n;
    private final int sign;
    private final int[] seconds;
    private final int[] values;
    private int head;
    private int end;

    Extreme(int n, int sign) {
      this.n = n;
      this.sign = sign;
      this.seconds = new int[Settle1.SECONDS];
      this.values = new int[Settle1.SECONDS];
    }

    void clear() {
      head = 0;
      end = 0;
    }

    void take(int second, int value) {
      while (end > head && sign * values[end - 1] <= sign * value) {
        end--;
      }
      seconds[end] = second;
      values[end] = value;
      end++;
      if (seconds[head] <= second - n) {
        head++;
      }
    }

    int value() {
      return values[head];
    }
  }
}
