package org.restpoint.stability.fit;

/** What came of fitting a curve with a bend at the low end. */
public sealed interface LowEndFit {

  /**
   * The bend is more than chance: use the curve.
   *
   * @param curve the curve
   * @param probability of such a bend by chance; 0 where a standard of 0 leaves no line
   */
  record Curved(LowEndCurve curve, double probability) implements LowEndFit {}

  /**
   * No bend can be told from chance: use the line.
   *
   * @param line the line of y on τ·log10 c
   * @param probability of such a bend by chance; ½ where b stays at 0
   */
  record Straight(WeightedLine line, double probability) implements LowEndFit {}

  /**
   * Three parameters and a degree of freedom need more standards.
   *
   * @param standards n
   * @param needed the fewest that will do
   */
  record TooFewStandards(int standards, int needed) implements LowEndFit {}

  /**
   * The standards do not determine the curve.
   *
   * @param reason why
   */
  record Undetermined(Reason reason) implements LowEndFit {}

  /** Why standards do not determine a curve. */
  enum Reason {
    /** All standards are alike. */
    ALIKE,
    /** There is a bend, but b would lie above the highest standard: none is on the linear part. */
    NO_LINEAR_PART,
    /** There is a bend, but the search for it found no end. */
    NOT_CONVERGED
  }
}
