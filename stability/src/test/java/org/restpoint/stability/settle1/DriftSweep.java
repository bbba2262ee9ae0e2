package org.restpoint.stability.settle1;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.restpoint.stability.rest.DriftRule;

/**
 * All settings of a drift below a limit: over 10 to 180 s, 0.05 to 3 mV/min, with 0 to 3 standard
 * errors. For one window and number of standard errors a curve is gone through once; a lower limit
 * is never met before a higher one.
 *
 * <pre>
 *   d    = 60·(n·Σtv − Σt·Σv)/Q          mV/min, Q = n·Σt² − (Σt)² = n²·(n² − 1)/12
 *   u(d) = 60·√(s²·n/Q)                  s² = [n·Σv² − (Σv)² − (n·Σtv − Σt·Σv)²/Q]/(n·(n − 2))
 *   E    = Σv/n + d·(t_end − t̄)/60
 * </pre>
 *
 * n is one more than the seconds of the window, as both of its ends are readings.
 */
final class DriftSweep {

  private static final int[] SECONDS = IntStream.rangeClosed(2, 36).map(i -> 5 * i).toArray();

  private static final double[] STANDARD_ERRORS = {0, 0.5, 1, 1.5, 2, 2.5, 3};

  /** In mV/min, ascending. */
  private static final double[] LIMITS = {
    0.05, 0.06, 0.08, 0.1, 0.12, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.2, 1.5, 2, 2.5, 3
  };

  /** As the rule allows. */
  private static final double ROUNDING = 1e-9;

  private DriftSweep() {}

  /** On the readings as they are. */
  static List<Swept> raw(List<Curve> curves) {
    List<ExactTrace> traces = ExactTrace.of(curves);
    return Arrays.stream(SECONDS)
        .parallel()
        .mapToObj(seconds -> over(traces, seconds))
        .flatMap(List::stream)
        .toList();
  }

  private static List<Swept> over(List<ExactTrace> traces, int seconds) {
    Tally[][] tallies = new Tally[STANDARD_ERRORS.length][LIMITS.length];
    for (Tally[] row : tallies) {
      Arrays.setAll(row, i -> new Tally());
    }
    Line[] lines = new Line[Settle1.SECONDS];
    for (ExactTrace trace : traces) {
      for (int t = seconds; t < trace.to(); t++) {
        lines[t] = Line.through(trace, t, seconds + 1);
      }
      for (int k = 0; k < STANDARD_ERRORS.length; k++) {
        decide(trace, lines, seconds, STANDARD_ERRORS[k], tallies[k]);
      }
    }
    List<Swept> swept = new ArrayList<>();
    for (int k = 0; k < STANDARD_ERRORS.length; k++) {
      for (int i = 0; i < LIMITS.length; i++) {
        Duration over = Duration.ofSeconds(seconds);
        DriftRule rule =
            new DriftRule(LIMITS[i], over, STANDARD_ERRORS[k], DriftRule.USUAL_READINGS);
        swept.add(tallies[k][i].swept(Candidate.of(rule)));
      }
    }
    return swept;
  }

  private static void decide(
      ExactTrace trace, Line[] lines, int from, double standardErrors, Tally[] tallies) {
    int undecided = LIMITS.length;
    for (int t = from; t < trace.to() && undecided > 0; t++) {
      double bound = Math.abs(lines[t].slope()) + standardErrors * lines[t].standardError();
      while (undecided > 0 && bound <= LIMITS[undecided - 1] + ROUNDING) {
        undecided--;
        tallies[undecided].settled(trace.curve(), t, lines[t].end());
      }
    }
    for (int i = 0; i < undecided; i++) {
      tallies[i].never();
    }
  }

  /**
   * A line through the last readings.
   *
   * @param slope in mV/min
   * @param standardError of the slope, in mV/min
   * @param end its value at the last reading, in mV
   */
  private record Line(double slope, double standardError, double end) {

    static Line through(ExactTrace trace, int second, int n) {
      long sum = trace.sum(second, n);
      long timesTwice = (2L * second - n + 1) * n;
      double q = (double) n * n * ((double) n * n - 1) / 12;
      double product = n * trace.sumByTime(second, n) - timesTwice * sum / 2.0;
      double squares = n * trace.sumOfSquares(second, n) - sum * sum;
      double perSecond = product / q / ExactTrace.HUNDREDTHS;
      double about = Math.max(0, squares - product * product / q);
      double error = Math.sqrt(about / (n - 2) / q) / ExactTrace.HUNDREDTHS;
      double mean = (double) sum / n / ExactTrace.HUNDREDTHS;
      return new Line(60 * perSecond, 60 * error, mean + perSecond * (n - 1) / 2);
    }
  }
}
