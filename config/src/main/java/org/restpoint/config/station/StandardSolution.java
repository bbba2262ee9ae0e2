package org.restpoint.config.station;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A standard solution.
 *
 * @param name what instructions call it
 * @param concentration its concentration, above zero
 * @param basis {@code as-N} or {@code as-ion}; empty where the analyte leaves no choice
 * @param relativeUncertainty standard uncertainty as a share of the concentration, 0 to 1
 * @param lot the lot's mark, if any
 * @param expires the last day it may be used
 */
public record StandardSolution(
    String name,
    Quantity concentration,
    Optional<String> basis,
    double relativeUncertainty,
    Optional<String> lot,
    Optional<LocalDate> expires) {

  /** Checks the ranges. */
  public StandardSolution {
    if (!(concentration.value() > 0)) {
      throw new IllegalArgumentException("a standard is above zero: " + concentration);
    }
    if (!(relativeUncertainty >= 0 && relativeUncertainty <= 1)) {
      throw new IllegalArgumentException("a share is 0 to 1: " + relativeUncertainty);
    }
  }
}
