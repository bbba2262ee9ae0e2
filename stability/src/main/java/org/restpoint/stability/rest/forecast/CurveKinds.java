package org.restpoint.stability.rest.forecast;

/**
 * The {@link Candidates} in kinds: curves of one formula that differ by their time constant alone,
 * which stand in a geometric row. A pair of exponentials belongs to the kind of its distance and is
 * told by its slow time constant.
 */
final class CurveKinds {

  private static final double LN_2 = Math.log(2);
  private static final double EXPONENTIALS_STEP = LN_2 / 7;

  /** Which kind each curve is of, in the order of {@link Candidates}. */
  private static final int[] KIND = new int[Candidates.COUNT];

  /** ln τ of each curve, τ in s. */
  private static final double[] LN_SECONDS = new double[Candidates.COUNT];

  private static final Rows ROWS = new Rows();

  /** How many kinds there are. */
  static final int COUNT = ROWS.kinds;

  private static final double[] FIRST = new double[COUNT];
  private static final double[] STEP = new double[COUNT];
  private static final int[] SIZE = new int[COUNT];
  private static final double[] UNINFORMED = new double[COUNT];

  static {
    double[] uninformed = Candidates.uninformed();
    for (int curve = 0; curve < Candidates.COUNT; curve++) {
      int kind = KIND[curve];
      if (SIZE[kind] == 0) {
        FIRST[kind] = LN_SECONDS[curve];
      } else {
        STEP[kind] = (LN_SECONDS[curve] - FIRST[kind]) / SIZE[kind];
      }
      SIZE[kind]++;
      UNINFORMED[kind] += uninformed[curve];
    }
  }

  private CurveKinds() {}

  /** The rows of {@link Shapes} and {@link Pairs}, in the order of {@link Candidates}. */
  private static final class Rows {

    private int kinds;
    private int curves;

    Rows() {
      shapes();
      for (int power = 0; power < 3; power++) {
        row(Shapes.HYPERBOLAS, Math.log(0.3), Math.log(1.3));
      }
      shapes();
      Pairs pairs = new Pairs();
      for (int pair = 0; pair < Pairs.COUNT; pair++) {
        boolean next = pair > 0 && pairs.slow(pair) < pairs.slow(pair - 1);
        kinds += next ? 1 : 0;
        put(EXPONENTIALS_STEP * pairs.slow(pair));
      }
      kinds++;
    }

    private void shapes() {
      row(Shapes.EXPONENTIALS, 0, EXPONENTIALS_STEP);
      row(Shapes.MEMBRANES, Math.log(1e-4), Math.log(4));
      row(Shapes.ROOTS, 0, 2 * LN_2 / 5);
      row(Shapes.STRETCHED - Shapes.ROOTS, 0, LN_2 / 3.5);
    }

    private void row(int count, double first, double step) {
      for (int i = 0; i < count; i++) {
        put(first + i * step);
      }
      kinds++;
    }

    private void put(double lnSeconds) {
      KIND[curves] = kinds;
      LN_SECONDS[curves] = lnSeconds;
      curves++;
    }
  }

  /** The kind of a curve. */
  static int of(int curve) {
    return KIND[curve];
  }

  /** ln τ of a curve, τ in s. */
  static double lnSeconds(int curve) {
    return LN_SECONDS[curve];
  }

  /** How likely a kind is before any reading. */
  static double uninformed(int kind) {
    return UNINFORMED[kind];
  }

  /** The middle of a kind's row, ln τ. */
  static double middle(int kind) {
    return FIRST[kind] + STEP[kind] * (SIZE[kind] - 1) / 2;
  }

  /** The variance of ln τ along a kind's row. */
  static double variance(int kind) {
    double width = STEP[kind] * (SIZE[kind] - 1);
    return width * width / 12;
  }

  /** The variance of ln τ between neighbours of a kind's row, which none of its curves can tell. */
  static double roundingVariance(int kind) {
    return STEP[kind] * STEP[kind] / 12;
  }
}
