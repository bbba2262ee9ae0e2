package org.restpoint.stability.preparation;

import java.util.List;
import org.restpoint.stability.uncertainty.Source.Quantity;

/** How much soil went into the extractant. */
public sealed interface SoilPortion {

  /** What its mass is the mass of: as received or air-dry. */
  SoilBasis basis();

  /** What its mass is known from, in order. */
  List<Quantity> sources();

  /**
   * Its mass in g.
   *
   * @param inputs values of {@link #sources()}, in their order
   */
  double grams(double[] inputs);

  /**
   * A portion on a balance.
   *
   * @param massGrams g, above zero
   * @param basis as received or air-dry
   */
  record Weighed(Quantity massGrams, SoilBasis basis) implements SoilPortion {

    public Weighed {
      Given.aboveZero(massGrams, "g");
      requireWithWater(basis);
    }

    @Override
    public List<Quantity> sources() {
      return List.of(massGrams);
    }

    @Override
    public double grams(double[] inputs) {
      return inputs[0];
    }
  }

  /**
   * Level scoops: {@code m = n·V·ρ}. All are of one scoop, so an error of its volume counts n
   * times. How evenly it was levelled belongs into the uncertainty of the density.
   *
   * @param count n, 1 or above
   * @param scoop V of one scoop
   * @param gramsPerMillilitre ρ of the soil as it lies in the scoop, g/mL, above zero
   * @param densitySource where ρ comes from, for a person
   * @param basis as received or air-dry
   */
  record Scooped(
      int count, Volume scoop, Quantity gramsPerMillilitre, String densitySource, SoilBasis basis)
      implements SoilPortion {

    /**
     * What a laboratory's scoops are made for: 16 mL hold 20 g and 4 mL hold 5 g of crushed air-dry
     * soil (Clemson University, Agricultural Service Laboratory, soil procedures, seen). A
     * suggestion: sand weighs more and muck far less.
     */
    public static final double SUGGESTED_GRAMS_PER_MILLILITRE = 1.25;

    public Scooped {
      if (count < 1) {
        throw new IllegalArgumentException("one scoop or more, not " + count);
      }
      if (densitySource.isBlank()) {
        throw new IllegalArgumentException("a density says where it comes from");
      }
      Given.aboveZero(gramsPerMillilitre, "g/mL");
      requireWithWater(basis);
    }

    @Override
    public List<Quantity> sources() {
      return List.of(scoop.quantity(), gramsPerMillilitre);
    }

    @Override
    public double grams(double[] inputs) {
      return count * inputs[0] * inputs[1];
    }
  }

  private static void requireWithWater(SoilBasis basis) {
    if (basis == SoilBasis.OVEN_DRY) {
      throw new IllegalArgumentException(
          "soil is portioned as received or air-dry; oven-dry is what its result is given on");
    }
  }
}
