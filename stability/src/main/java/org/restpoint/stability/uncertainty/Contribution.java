package org.restpoint.stability.uncertainty;

import java.util.List;

/**
 * What one source adds to the uncertainty of the measurand.
 *
 * @param source the source
 * @param sensitivities ∂f/∂x of each of its quantities, in units of the measurand by those of x
 * @param standardUncertainty its part of u(y), k = 1, in the unit of the measurand: {@code
 *     |c|·u(x)} of one quantity, {@code √(cᵀVc)} of several
 * @param sharePercent its square as a share of u²(y), %; 0 where nothing is uncertain
 */
public record Contribution(
    Source source, List<Double> sensitivities, double standardUncertainty, double sharePercent) {

  public Contribution {
    sensitivities = List.copyOf(sensitivities);
  }
}
