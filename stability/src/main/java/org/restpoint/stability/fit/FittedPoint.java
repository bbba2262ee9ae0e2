package org.restpoint.stability.fit;

import java.util.OptionalDouble;

/**
 * A point of a weighted line with what the line makes of it.
 *
 * <p>{@code r = y − a − b·x}; leverage {@code h = w·(1/Σw + (x−x̄)²/Σw(x−x̄)²)}; since a and b are
 * sums over the y with fixed factors, {@code ∂b/∂y = w·(x−x̄)/Σw(x−x̄)²} and {@code ∂a/∂y = w/Σw −
 * x̄·∂b/∂y}.
 *
 * @param x x
 * @param y y
 * @param standardUncertainty u(y), above 0
 * @param residual r
 * @param leverage h, 0 to 1; 1 where the line goes through the point whatever its y
 * @param interceptSensitivity ∂a/∂y
 * @param slopeSensitivity ∂b/∂y
 */
public record FittedPoint(
    double x,
    double y,
    double standardUncertainty,
    double residual,
    double leverage,
    double interceptSensitivity,
    double slopeSensitivity) {

  /** Where this little is left of a point's own share, rounding decides on its residual. */
  private static final double NO_SHARE = 1e-9;

  /**
   * {@code r/(u·√(1−h))}, the residual in standard deviations expected of it; empty for a point
   * that the line follows wherever it lies.
   */
  public OptionalDouble standardized() {
    double share = 1 - leverage;
    return share > NO_SHARE
        ? OptionalDouble.of(residual / (standardUncertainty * Math.sqrt(share)))
        : OptionalDouble.empty();
  }
}
