package org.restpoint.stability.detection;

import org.restpoint.stability.fit.LineEstimate;
import org.restpoint.stability.fit.WeightedLine;

/** What a search for the crossing of the two straight parts of a calibration found. */
public sealed interface DetectionLimit {

  /**
   * The two parts cross: the detection limit.
   *
   * @param log10Concentration where, in the unit of the standards
   * @param standardUncertaintyDecades of that, from both lines
   * @param low the low part, of potential on log10 c; level or less than half as steep as the other
   * @param lowStandards how many lie on it
   * @param bendStandards how many lie on neither, between the two
   * @param linear the linear part
   */
  record Crossing(
      double log10Concentration,
      double standardUncertaintyDecades,
      LineEstimate low,
      int lowStandards,
      int bendStandards,
      WeightedLine linear)
      implements DetectionLimit {

    /** The concentration at the crossing. */
    public double concentration() {
      return Math.pow(10, log10Concentration);
    }

    /** Its relative standard uncertainty, to first order. */
    public double relativeStandardUncertainty() {
      return Math.log(10) * standardUncertaintyDecades;
    }
  }

  /**
   * All standards lie on one line within their uncertainties: the limit is below the lowest.
   *
   * @param line that line
   */
  record NoLowPart(WeightedLine line) implements DetectionLimit {}

  /**
   * The standards lie on no line, nor on two that cross as they must: a low part less than half as
   * steep, and the crossing between the lowest and the highest standard.
   *
   * @param line the line through all
   */
  record NotTwoParts(WeightedLine line) implements DetectionLimit {}

  /**
   * Two parts need two different concentrations each.
   *
   * @param concentrations how many different ones there are
   * @param needed the fewest that will do
   */
  record TooFewStandards(int concentrations, int needed) implements DetectionLimit {}
}
