package org.restpoint.stability.detection;

/** How far a standard may lie off a line and still count as on it. */
public sealed interface Linearity {

  /**
   * The largest residual allowed on a line.
   *
   * @param slope the line's slope, in the unit of its y a decade
   * @return in the unit of y, 0 or above
   */
  double allowed(double slope);

  /**
   * A residual in mV.
   *
   * @param millivolts above 0
   */
  record WithinMillivolts(double millivolts) implements Linearity {

    /** Refuses a tolerance not above 0. */
    public WithinMillivolts {
      requireTolerance(millivolts);
    }

    @Override
    public double allowed(double slope) {
      return millivolts;
    }
  }

  /**
   * A share of the concentration read back: {@code |r| ≤ |S|·log10(1 + share)}.
   *
   * @param share above 0; 0.05 for 5 %
   */
  record WithinShare(double share) implements Linearity {

    /** Refuses a tolerance not above 0. */
    public WithinShare {
      requireTolerance(share);
    }

    @Override
    public double allowed(double slope) {
      return Math.abs(slope) * Math.log1p(share) / Math.log(10);
    }
  }

  private static void requireTolerance(double tolerance) {
    if (!(tolerance > 0) || Double.isInfinite(tolerance)) {
      throw new IllegalArgumentException("a tolerance is above 0 and finite, found " + tolerance);
    }
  }
}
