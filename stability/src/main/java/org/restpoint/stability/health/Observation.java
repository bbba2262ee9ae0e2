package org.restpoint.stability.health;

import java.time.Instant;

/**
 * Something seen of an electrode. Refuses, with an {@link IllegalArgumentException}, what is not
 * finite and an uncertainty below 0.
 *
 * @param time when
 * @param quantity what
 * @param standard in which standard; of a slope, in which ones, which is kept but not compared by
 * @param value how much, in the unit of the quantity
 * @param standardUncertainty its standard uncertainty, k = 1, 0 where it is not known
 */
public record Observation(
    Instant time, Quantity quantity, String standard, double value, double standardUncertainty) {

  public Observation {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("what is observed is a finite number, not " + value);
    }
    if (!(standardUncertainty >= 0) || Double.isInfinite(standardUncertainty)) {
      throw new IllegalArgumentException("an uncertainty is a finite number, 0 or above");
    }
  }
}
