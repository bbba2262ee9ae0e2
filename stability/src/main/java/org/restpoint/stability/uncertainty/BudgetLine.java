package org.restpoint.stability.uncertainty;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What one source adds to the uncertainty of a measurand, as it is told.
 *
 * @param source what it is
 * @param estimate its value; absent where several quantities make one source
 * @param standardUncertainty of that value, k = 1
 * @param unit of both, a UCUM code or a word
 * @param sensitivity by how much the measurand changes for one of that unit
 * @param contribution its part of the measurand's standard uncertainty (k = 1), in the unit of the
 *     measurand
 * @param sharePercent its share of the variance, %
 */
public record BudgetLine(
    String source,
    OptionalDouble estimate,
    OptionalDouble standardUncertainty,
    Optional<String> unit,
    OptionalDouble sensitivity,
    double contribution,
    double sharePercent) {

  /** The line of a contribution. */
  static BudgetLine of(Contribution part) {
    if (part.source() instanceof Source.Quantity one) {
      return new BudgetLine(
          one.name(),
          OptionalDouble.of(one.value()),
          OptionalDouble.of(one.standardUncertainty()),
          Optional.of(one.unit()),
          OptionalDouble.of(part.sensitivities().get(0)),
          part.standardUncertainty(),
          part.sharePercent());
    }
    return new BudgetLine(
        part.source().name(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        OptionalDouble.empty(),
        part.standardUncertainty(),
        part.sharePercent());
  }
}
