package org.restpoint.stability.preparation;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * Analyte on an area of a field, summed over its layers.
 *
 * <p>{@code A = Σ 0.1·q·d·ρ_b}: A in kg/ha, q in mg/kg of oven-dry soil, d the layer's thickness in
 * cm, ρ_b its bulk density in g/cm³. A hectare of 1 cm and 1 g/cm³ is 10⁵ kg, whence 0.1. In pounds
 * per acre, {@code A·4046.8564224/(10000·0.45359237)}, both exact by the international yard and
 * pound of 1959.
 *
 * <p>The layers' quantities count as independent of each other. What the analyte's mass is the mass
 * of (the ion, the nitrogen in it) is that of q.
 *
 * <p>Edge results: a layer that is not of oven-dry soil is counted as it is and named {@code
 * not-dry-soil}, since bulk density is that of dry soil. No layer is refused with an {@link
 * IllegalArgumentException}. Method: law of propagation ({@link Budget}). Reference: NIST Handbook
 * 44, appendix C (units); bulk density as in ISO 11272:2017.
 *
 * @param layers from above downwards, at least one
 */
public record SoilProfile(List<SoilLayer> layers) {

  /** kg/ha for mg/kg·cm·g/cm³. */
  private static final double KILOGRAMS_PER_HECTARE = 0.1;

  private static final double KILOGRAMS_PER_POUND = 0.45359237;
  private static final double SQUARE_METRES_PER_ACRE = 4046.8564224;
  private static final double SQUARE_METRES_PER_HECTARE = 10_000;

  public SoilProfile {
    layers = List.copyOf(layers);
    if (layers.isEmpty()) {
      throw new IllegalArgumentException("a profile has a layer");
    }
  }

  /** Analyte on a hectare, kg/ha. */
  public Budget kilogramsPerHectare() {
    return Budget.of("on the field", "kg/har", sources(), this::sum);
  }

  /**
   * Analyte on an international acre, lb/acre. Its unit is written with UCUM's only American acre,
   * that of the old survey, which is 4 millionths larger.
   */
  public Budget poundsPerAcre() {
    return Budget.of("on the field", "[lb_av]/[acr_us]", sources(), x -> poundsPerAcre(sum(x)));
  }

  /** kg/ha in lb/acre. */
  public static double poundsPerAcre(double kilogramsPerHectare) {
    return kilogramsPerHectare
        / KILOGRAMS_PER_POUND
        * SQUARE_METRES_PER_ACRE
        / SQUARE_METRES_PER_HECTARE;
  }

  /** What a person has to know about the sum. */
  public List<Reason> remarks() {
    return layers.stream()
        .filter(layer -> layer.basis() != SoilBasis.OVEN_DRY)
        .map(
            layer ->
                new Reason(
                    "not-dry-soil",
                    "the result of layer "
                        + layer.name()
                        + " is of soil "
                        + layer.basis().code()
                        + ", its bulk density of dry soil: the area's figure is too low by the"
                        + " moisture",
                    "Give the moisture of the soil."))
        .toList();
  }

  private double sum(double[] inputs) {
    double sum = 0;
    for (int i = 0; i < inputs.length; i += 3) {
      sum += KILOGRAMS_PER_HECTARE * inputs[i] * inputs[i + 1] * inputs[i + 2];
    }
    return sum;
  }

  private List<Quantity> sources() {
    List<Quantity> sources = new ArrayList<>();
    for (SoilLayer layer : layers) {
      Stream.of(layer.milligramsPerKilogram(), layer.thicknessCentimetres(), layer.bulkDensity())
          .map(quantity -> named(layer.name() + ": " + quantity.name(), quantity))
          .forEach(sources::add);
    }
    return sources;
  }

  private static Quantity named(String name, Quantity quantity) {
    return new Quantity(
        name,
        quantity.unit(),
        quantity.value(),
        quantity.standardUncertainty(),
        quantity.degreesOfFreedom());
  }
}
