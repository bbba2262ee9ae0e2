package org.restpoint.stability.guidance;

/**
 * A layer of soil. Refuses, with an {@link IllegalArgumentException}, edges in the wrong order and
 * one above the ground.
 *
 * @param topCentimetres its upper edge below the ground, cm, 0 or above
 * @param bottomCentimetres its lower edge, cm, above the upper one and finite
 */
public record Depth(double topCentimetres, double bottomCentimetres) {

  /**
   * How far the edges of two layers may lie apart that count as the same one, cm: our choice, since
   * a foot (30.48 cm) is commonly called 30 cm and a hand probe goes in no more exactly.
   */
  public static final double WITHIN_CENTIMETRES = 2;

  public Depth {
    if (!isOne(topCentimetres, bottomCentimetres)) {
      throw new IllegalArgumentException(
          "a layer goes from 0 cm or deeper downwards, not from "
              + topCentimetres
              + " to "
              + bottomCentimetres
              + " cm");
    }
  }

  /** Whether these are the edges of a layer. */
  public static boolean isOne(double topCentimetres, double bottomCentimetres) {
    return topCentimetres >= 0
        && bottomCentimetres > topCentimetres
        && Double.isFinite(bottomCentimetres);
  }

  /** From its upper to its lower edge, cm. */
  public double thicknessCentimetres() {
    return bottomCentimetres - topCentimetres;
  }

  /** Whether a sample of the other layer counts as one of this. */
  public boolean isLike(Depth other) {
    return Math.abs(topCentimetres - other.topCentimetres) <= WITHIN_CENTIMETRES
        && Math.abs(bottomCentimetres - other.bottomCentimetres) <= WITHIN_CENTIMETRES;
  }

  /** As a person writes it: {@code 0 to 30 cm}. */
  public String text() {
    return Figures.number(topCentimetres) + " to " + Figures.number(bottomCentimetres) + " cm";
  }
}
