package org.restpoint.stability.preparation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * Soil in an extractant, read in the slurry or in the extract.
 *
 * <p>With the moisture W, % of the oven-dry mass: {@code m_dry = m·100/(100+W)}, soil water {@code
 * V_w = (m − m_dry)/ρ_w}, and {@code q = C·(V + V_w)/m_dry}: the water that the soil brings dilutes
 * the extractant. C in mg/L of what was read, V the extractant in mL, m the portion in g, ρ_w = 1
 * g/mL, q in mg/kg of oven-dry soil.
 *
 * <p>Edge results:
 *
 * <ul>
 *   <li>moisture unknown: {@code q = C·V/m}, per kg of soil as it was portioned, named {@code
 *       moisture-unknown}; it is not a result of dry soil and is not called one;
 *   <li>C = 0: q = 0 with the uncertainty of C.
 * </ul>
 *
 * <p>Analyte that was in the extractant itself is not in the formula: take it off C before. Method:
 * law of propagation ({@link Budget}). Reference: a balance of mass; oven-dry basis as in ISO
 * 11465:1993.
 *
 * @param portion the soil
 * @param extractant V
 * @param moisture W, where it is known
 */
public record SoilExtract(SoilPortion portion, Volume extractant, Optional<Moisture> moisture) {

  private static final String UNIT = "mg/kg";

  /** ρ_w, g/mL; water at 4 °C has 0.99997, at 25 °C 0.99704, far within a moisture's own doubt. */
  private static final double WATER_GRAMS_PER_MILLILITRE = 1;

  /**
   * What the soil holds.
   *
   * @param milligramsPerLitre C, 0 or above, unit {@code mg/L}
   */
  public SoilResult of(Quantity milligramsPerLitre) {
    Given.notNegative(milligramsPerLitre, "mg/L");
    List<Quantity> sources = new ArrayList<>();
    sources.add(milligramsPerLitre);
    sources.add(extractant.quantity());
    sources.addAll(portion.sources());
    int end = sources.size();
    if (moisture.isEmpty()) {
      Budget budget =
          Budget.of("in soil", UNIT, sources, x -> x[0] * x[1] / portion.grams(slice(x, end)));
      return new SoilResult(budget, portion.basis(), List.of(unknownMoisture(budget.value())));
    }
    sources.add(moisture.get().percentOfOvenDry());
    Budget budget =
        Budget.of(
            "in dry soil",
            UNIT,
            sources,
            x -> {
              double grams = portion.grams(slice(x, end));
              double dry = grams * 100 / (100 + x[end]);
              return x[0] * (x[1] + (grams - dry) / WATER_GRAMS_PER_MILLILITRE) / dry;
            });
    return new SoilResult(budget, SoilBasis.OVEN_DRY, List.of());
  }

  private static double[] slice(double[] inputs, int end) {
    return Arrays.copyOfRange(inputs, 2, end);
  }

  private Reason unknownMoisture(double value) {
    return new Reason(
        "moisture-unknown",
        String.format(
            Locale.ROOT,
            "the moisture is not known, so %.4g mg/kg is of soil %s, not of dry soil",
            value,
            portion.basis().code()),
        "Dry a weighed part of the same soil at 105 °C to constant mass and give its moisture.");
  }
}
