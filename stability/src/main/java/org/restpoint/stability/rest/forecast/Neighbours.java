package org.restpoint.stability.rest.forecast;

/**
 * Hands likelihood on to curves of the same kind with neighbouring time constants: a time constant
 * that was seen once comes back scattered.
 *
 * <pre>
 *   p(i) = Σⱼ K(i, j)·w(j),   K ∝ exp(−½·(ln(τᵢ/τⱼ)/h)²),   Σᵢ K(i, j) = 1
 * </pre>
 *
 * h = {@value #SCATTER}: a time constant comes back to within a third (our choice: a quarter for
 * the scatter between readings, the rest for what a single reading leaves open), or one step of a
 * row that is coarser. The two of a pair scatter together by h, and their distance by {@value
 * #SCATTER_OF_DISTANCE}. Nothing passes from one kind to another; sums are kept.
 */
final class Neighbours {

  private static final double SCATTER = 0.3;
  private static final double SCATTER_OF_DISTANCE = 0.3;

  /** Kernels end at so many h. */
  private static final double REACH = 3;

  private static final double LN_2 = Math.log(2);

  // The rows of Shapes.
  private static final Row EXPONENTIALS = new Row(LN_2 / 7);
  private static final Row MEMBRANES = new Row(Math.log(4));
  private static final Row ROOTS = new Row(2 * LN_2 / 5);
  private static final Row STEEPER = new Row(LN_2 / 3.5);
  private static final Row POWERS = new Row(Math.log(1.3));
  private static final int ROOT_COUNT = 21;

  private Neighbours() {}

  /** A geometric row of time constants, neighbours {@code step} nepers apart. */
  private record Row(double step) {

    void smooth(double[] from, double[] to, int first, int count) {
      double h = Math.max(SCATTER, step);
      int reach = (int) (REACH * h / step);
      double[] kernel = new double[reach + 1];
      for (int i = 0; i <= reach; i++) {
        double x = i * step / h;
        kernel[i] = Math.exp(-0.5 * x * x);
      }
      for (int j = 0; j < count; j++) {
        if (from[first + j] == 0) {
          continue;
        }
        int low = Math.max(0, j - reach);
        int high = Math.min(count - 1, j + reach);
        double sum = 0;
        for (int i = low; i <= high; i++) {
          sum += kernel[Math.abs(i - j)];
        }
        double each = from[first + j] / sum;
        for (int i = low; i <= high; i++) {
          to[first + i] += each * kernel[Math.abs(i - j)];
        }
      }
    }
  }

  /** What the weights become, in the order of {@link Candidates}; the sum stays. */
  static double[] smooth(double[] weights) {
    double[] smooth = new double[Candidates.COUNT];
    shapes(weights, smooth, 0);
    for (int power = 0; power < 3; power++) {
      int first = Shapes.FIRST_POWER + power * Shapes.HYPERBOLAS;
      POWERS.smooth(weights, smooth, first, Shapes.HYPERBOLAS);
    }
    shapes(weights, smooth, Candidates.FIRST_ON_ACTIVITIES);
    pairs(weights, smooth);
    return smooth;
  }

  private static void shapes(double[] weights, double[] smooth, int from) {
    EXPONENTIALS.smooth(weights, smooth, from, Shapes.EXPONENTIALS);
    MEMBRANES.smooth(weights, smooth, from + Shapes.FIRST_MEMBRANE, Shapes.MEMBRANES);
    int roots = from + Shapes.FIRST_STRETCHED;
    ROOTS.smooth(weights, smooth, roots, ROOT_COUNT);
    STEEPER.smooth(weights, smooth, roots + ROOT_COUNT, Shapes.STRETCHED - ROOT_COUNT);
  }

  private static void pairs(double[] weights, double[] smooth) {
    Pairs pairs = new Pairs();
    double[] apart = new double[Candidates.COUNT];
    for (int j = 0; j < Pairs.COUNT; j++) {
      double weight = weights[Candidates.FIRST_PAIR + j];
      if (weight == 0) {
        continue;
      }
      double sum = 0;
      for (int i = 0; i < Pairs.COUNT; i++) {
        sum += distance(pairs, i, j);
      }
      for (int i = 0; i < Pairs.COUNT; i++) {
        apart[Candidates.FIRST_PAIR + i] += weight * distance(pairs, i, j) / sum;
      }
    }
    int first = 0;
    while (first < Pairs.COUNT) {
      int next = first + 1;
      while (next < Pairs.COUNT && pairs.slow(next) > pairs.slow(next - 1)) {
        next++;
      }
      EXPONENTIALS.smooth(apart, smooth, Candidates.FIRST_PAIR + first, next - first);
      first = next;
    }
  }

  /** K of two pairs with the same slow exponential; 0 for others. */
  private static double distance(Pairs pairs, int i, int j) {
    if (pairs.slow(i) != pairs.slow(j)) {
      return 0;
    }
    double x = (pairs.fast(i) - pairs.fast(j)) * EXPONENTIALS.step() / SCATTER_OF_DISTANCE;
    return Math.exp(-0.5 * x * x);
  }
}
