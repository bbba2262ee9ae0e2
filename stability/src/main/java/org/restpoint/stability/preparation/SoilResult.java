package org.restpoint.stability.preparation;

import java.util.List;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * Analyte in soil.
 *
 * @param milligramsPerKilogram mg of analyte in a kg of soil, with its uncertainty
 * @param basis of what soil
 * @param remarks what a person has to know about it
 */
public record SoilResult(Budget milligramsPerKilogram, SoilBasis basis, List<Reason> remarks) {

  public SoilResult {
    remarks = List.copyOf(remarks);
  }

  /** The result as a source of uncertainty of what follows from it. */
  public Quantity quantity(String name) {
    return new Quantity(
        name,
        milligramsPerKilogram.unit(),
        milligramsPerKilogram.value(),
        milligramsPerKilogram.standardUncertainty(),
        milligramsPerKilogram.effectiveDegreesOfFreedom());
  }
}
