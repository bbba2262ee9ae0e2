package org.restpoint.stability.detection;

import org.restpoint.stability.fit.WeightedLine;

/** What a search for the linear range found. */
public sealed interface LinearRange {

  /**
   * The widest run of standards on one line.
   *
   * @param lowest its lowest concentration
   * @param highest its highest concentration
   * @param line the line of potential on log10 c through the standards of the run
   * @param largestResidual in the unit of the potential, without sign
   */
  record Found(double lowest, double highest, WeightedLine line, double largestResidual)
      implements LinearRange {

    /** Its width, decades. */
    public double decades() {
      return Math.log10(highest / lowest);
    }
  }

  /**
   * No three neighbouring concentrations lie on one line steep enough.
   *
   * @param standards how many were tried
   */
  record NoneFound(int standards) implements LinearRange {}
}
