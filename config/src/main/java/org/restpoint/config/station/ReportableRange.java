package org.restpoint.config.station;

/**
 * Between which values a number is given; beyond them only that it is below or above.
 *
 * @param low the lowest value that is given as a number: a concentration above zero on the
 *     electrode's own basis, or a pH from 0
 * @param high the highest one, in the same unit
 */
public record ReportableRange(Quantity low, Quantity high) {

  /** Checks the units and the order. */
  public ReportableRange {
    if (!low.unit().equals(high.unit())) {
      throw new IllegalArgumentException("a range has one unit: " + low + ", " + high);
    }
    boolean begins = low.unit().equals(Quantity.PH) ? low.value() >= 0 : low.value() > 0;
    if (!begins || !(low.value() < high.value())) {
      throw new IllegalArgumentException("a range out of order: " + low + ", " + high);
    }
  }
}
