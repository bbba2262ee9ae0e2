package org.restpoint.stability.guidance;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A number that a table is asked about. Refuses, with an {@link IllegalArgumentException}, a value
 * that is not finite and an uncertainty below zero.
 *
 * @param measurand what it is of
 * @param value the number, in the measurand's unit
 * @param expandedUncertainty U, k = 2, in the same unit, 0 or above; beside a limit that is told by
 *     {@code <} or {@code >}, that of a sample at the limit
 * @param relation how the number stands to what it is of
 * @param depth from where in the soil, where that is known
 * @param day of the measurement
 */
public record Found(
    Measurand measurand,
    double value,
    double expandedUncertainty,
    Relation relation,
    Optional<Depth> depth,
    LocalDate day) {

  public Found {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a number is finite, not " + value);
    }
    if (!(expandedUncertainty >= 0) || Double.isInfinite(expandedUncertainty)) {
      throw new IllegalArgumentException("U is 0 or above, not " + expandedUncertainty);
    }
  }

  /** The same, counted otherwise. */
  Found in(Measurand other, double factor) {
    return new Found(other, value * factor, expandedUncertainty * factor, relation, depth, day);
  }

  /** The lowest that it may be: without end where it is told by {@code <}. */
  double lowest() {
    return relation == Relation.BELOW ? Double.NEGATIVE_INFINITY : value - expandedUncertainty;
  }

  /** The highest that it may be: without end where it is told by {@code >}. */
  double highest() {
    return relation == Relation.ABOVE ? Double.POSITIVE_INFINITY : value + expandedUncertainty;
  }

  /** The number as a person writes it: {@code 9.80 ± 0.50 mg/L as N}, {@code below 2 mg/L as N}. */
  String text() {
    String number =
        switch (relation) {
          case EQUAL -> Figures.number(value, expandedUncertainty);
          case BELOW -> "below " + Figures.number(value);
          case ABOVE -> "above " + Figures.number(value);
        };
    return number + " " + measurand.units();
  }
}
