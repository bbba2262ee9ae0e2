package org.restpoint.stability.guidance;

import java.util.OptionalDouble;

/**
 * A rate that a table recommends.
 *
 * @param poundsPerAcre the rate, lb N/acre, 0 or above
 * @param expandedUncertainty U, k = 2; empty where the rate is 0 because there can be none below
 * @param reckoned how, with its figures
 */
public record Rate(double poundsPerAcre, OptionalDouble expandedUncertainty, String reckoned) {

  /** The unit of every rate. */
  public static final String UNIT = "lb N/acre";
}
