package org.restpoint.stability.preparation;

import java.util.List;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * Water in soil as a percentage of its oven-dry mass.
 *
 * <p>{@code W = 100·m_water/m_dry}. From a percentage w of the moist mass: {@code W =
 * 100·w/(100−w)}. From weighings: {@code W = 100·(m_wet − m_dry)/(m_dry − m_pan)}, the pan within
 * both. So oven-dry soil is {@code m·100/(100+W)} of m moist.
 *
 * <p>Edge results: W may be above 100 (peat); a w of 100 or above, or a pan that weighs more dry
 * than wet, is refused with an {@link IllegalArgumentException}. Method: law of propagation ({@link
 * Budget}); the three weighings count as independent. Reference: ISO 11465:1993, Soil quality,
 * determination of dry matter and water content on a mass basis, gravimetric method.
 *
 * @param percentOfOvenDry W, %, 0 or above
 */
public record Moisture(Quantity percentOfOvenDry) {

  private static final String NAME = "moisture";
  private static final String PERCENT = "%";

  public Moisture {
    Given.notNegative(percentOfOvenDry, PERCENT);
  }

  /** Moisture known as a percentage of the oven-dry mass. */
  public static Moisture ofOvenDry(double percent, double standardUncertaintyPercent) {
    return new Moisture(Quantity.of(NAME, PERCENT, percent, standardUncertaintyPercent));
  }

  /** Moisture known as a percentage of the moist mass, below 100. */
  public static Moisture ofMoist(double percent, double standardUncertaintyPercent) {
    Quantity given = Quantity.of(NAME, PERCENT, percent, standardUncertaintyPercent);
    Given.notNegative(given, PERCENT);
    if (percent >= 100) {
      throw new IllegalArgumentException(
          "moist soil is less than 100 % water, not " + percent + " %");
    }
    return of(Budget.of(NAME, PERCENT, List.of(given), x -> 100 * x[0] / (100 - x[0])));
  }

  /**
   * Moisture from weighings.
   *
   * @param panGrams the empty pan, g
   * @param wetGrams the pan with moist soil, g
   * @param dryGrams the pan with oven-dry soil, g
   */
  public static Moisture ofWeighings(Quantity panGrams, Quantity wetGrams, Quantity dryGrams) {
    Given.notNegative(panGrams, "g");
    Given.aboveZero(wetGrams, "g");
    Given.aboveZero(dryGrams, "g");
    if (wetGrams.value() < dryGrams.value() || dryGrams.value() <= panGrams.value()) {
      throw new IllegalArgumentException(
          "soil loses mass by drying and weighs more than nothing: pan "
              + panGrams.value()
              + " g, wet "
              + wetGrams.value()
              + " g, dry "
              + dryGrams.value()
              + " g");
    }
    return of(
        Budget.of(
            NAME,
            PERCENT,
            List.of(panGrams, wetGrams, dryGrams),
            x -> 100 * (x[1] - x[2]) / (x[2] - x[0])));
  }

  private static Moisture of(Budget budget) {
    return new Moisture(
        new Quantity(
            NAME,
            PERCENT,
            budget.value(),
            budget.standardUncertainty(),
            budget.effectiveDegreesOfFreedom()));
  }
}
