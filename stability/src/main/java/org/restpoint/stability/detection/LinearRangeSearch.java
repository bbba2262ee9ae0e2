package org.restpoint.stability.detection;

import org.restpoint.stability.fit.FittedPoint;
import org.restpoint.stability.fit.WeightedLine;

/**
 * Finds the widest run of neighbouring standards that all lie on the line fitted through them.
 *
 * <p>Every run of three different concentrations or more is tried: the weighted line of potential
 * on log10 c through it counts when its slope is steep enough and no residual is larger than
 * allowed. The widest in decades is taken; of two as wide the one with more standards, then the one
 * with the smaller largest residual, then the higher one. Standards of one concentration stay
 * together.
 *
 * <p>Edge results: {@link LinearRange.NoneFound} for fewer than three concentrations or where no
 * run counts; a concentration or an uncertainty not above 0, or a potential not finite, is refused
 * with an {@link IllegalArgumentException}.
 *
 * <p>Reference: R. P. Buck, E. Lindner, Recommendations for nomenclature of ion-selective
 * electrodes, Pure Appl. Chem. 66 (1994) 2527, doi 10.1351/pac199466122527 (linear range); K.
 * Danzer, L. A. Currie, Guidelines for calibration in analytical chemistry, Pure Appl. Chem. 70
 * (1998) 993, doi 10.1351/pac199870040993.
 *
 * @param tolerance how far off a standard may lie
 * @param leastSlope the least steepness that is a response, without sign, in the unit of the
 *     potential a decade, above 0; keeps the level part at the low end from counting
 */
public record LinearRangeSearch(Linearity tolerance, double leastSlope) {

  private static final int FEWEST = 3;
  private static final double SAME_WIDTH_DECADES = 1e-9;

  /** Refuses a steepness not above 0. */
  public LinearRangeSearch {
    if (!(leastSlope > 0) || Double.isInfinite(leastSlope)) {
      throw new IllegalArgumentException(
          "the least slope is above 0 and finite, found " + leastSlope);
    }
  }

  /**
   * Searches the standards, given in any order.
   *
   * @param concentrations above 0
   * @param potentials of each
   * @param uncertainties standard uncertainties of the potentials, above 0
   */
  public LinearRange among(double[] concentrations, double[] potentials, double[] uncertainties) {
    RankedStandards standards = RankedStandards.of(concentrations, potentials, uncertainties);
    int n = standards.count();
    Run best = null;
    for (int from = 0; from < n; from++) {
      for (int to = from + FEWEST; to <= n; to++) {
        if (standards.begins(from)
            && (to == n || standards.begins(to))
            && standards.different(from, to) >= FEWEST) {
          Run run = run(standards, from, to);
          if (counts(run) && (best == null || run.isBetterThan(best))) {
            best = run;
          }
        }
      }
    }
    return best == null
        ? new LinearRange.NoneFound(n)
        : new LinearRange.Found(best.low, best.high, best.line, best.largestResidual);
  }

  private boolean counts(Run run) {
    double slope = run.line.estimate().slope();
    return Math.abs(slope) >= leastSlope && run.largestResidual <= tolerance.allowed(slope);
  }

  private static Run run(RankedStandards standards, int from, int to) {
    WeightedLine line = standards.line(from, to);
    double largest = 0;
    for (FittedPoint point : line.points()) {
      largest = Math.max(largest, Math.abs(point.residual()));
    }
    return new Run(standards.concentration(from), standards.concentration(to - 1), line, largest);
  }

  private record Run(double low, double high, WeightedLine line, double largestResidual) {

    boolean isBetterThan(Run other) {
      double wider = Math.log10(high / low) - Math.log10(other.high / other.low);
      if (Math.abs(wider) > SAME_WIDTH_DECADES) {
        return wider > 0;
      }
      int more = line.points().size() - other.line.points().size();
      return more != 0 ? more > 0 : largestResidual <= other.largestResidual;
    }
  }
}
