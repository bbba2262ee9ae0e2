package org.restpoint.stability.detection;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;
import org.restpoint.stability.fit.WeightedLine;

/** Standards by rising concentration, whatever order they were given in. */
final class RankedStandards {

  private final double[] concentrations;
  private final double[] log10;
  private final double[] y;
  private final double[] u;

  private RankedStandards(double[] concentrations, double[] y, double[] u) {
    this.concentrations = concentrations;
    this.log10 = Arrays.stream(concentrations).map(Math::log10).toArray();
    this.y = y;
    this.u = u;
  }

  static RankedStandards of(double[] concentrations, double[] y, double[] u) {
    int n = concentrations.length;
    if (y.length != n || u.length != n) {
      throw new IllegalArgumentException(
          "each standard has a concentration, a potential and its uncertainty, found "
              + n
              + ", "
              + y.length
              + " and "
              + u.length);
    }
    for (int i = 0; i < n; i++) {
      if (!(concentrations[i] > 0 && u[i] > 0)
          || !Double.isFinite(concentrations[i] + y[i] + u[i])) {
        throw new IllegalArgumentException(
            "standard "
                + (i + 1)
                + " has a concentration above 0, a finite potential and an uncertainty above 0,"
                + " found "
                + concentrations[i]
                + ", "
                + y[i]
                + " and "
                + u[i]);
      }
    }
    int[] order =
        IntStream.range(0, n)
            .boxed()
            .sorted(
                Comparator.<Integer>comparingDouble(i -> concentrations[i])
                    .thenComparingDouble(i -> y[i])
                    .thenComparingDouble(i -> u[i]))
            .mapToInt(Integer::intValue)
            .toArray();
    return new RankedStandards(
        Arrays.stream(order).mapToDouble(i -> concentrations[i]).toArray(),
        Arrays.stream(order).mapToDouble(i -> y[i]).toArray(),
        Arrays.stream(order).mapToDouble(i -> u[i]).toArray());
  }

  int count() {
    return y.length;
  }

  double concentration(int rank) {
    return concentrations[rank];
  }

  double log10(int rank) {
    return log10[rank];
  }

  double y(int rank) {
    return y[rank];
  }

  double u(int rank) {
    return u[rank];
  }

  /** True where no standard below has the same concentration. */
  boolean begins(int rank) {
    return rank == 0 || log10[rank] > log10[rank - 1];
  }

  /** Different concentrations from {@code from} up to, but not with, {@code to}. */
  int different(int from, int to) {
    int different = 0;
    for (int i = from; i < to; i++) {
      different += i == from || log10[i] > log10[i - 1] ? 1 : 0;
    }
    return different;
  }

  /** The line of y on log10 c from {@code from} up to, but not with, {@code to}. */
  WeightedLine line(int from, int to) {
    return WeightedLine.through(
        Arrays.copyOfRange(log10, from, to),
        Arrays.copyOfRange(y, from, to),
        Arrays.copyOfRange(u, from, to));
  }
}
