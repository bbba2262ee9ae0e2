package org.restpoint.stability.fit;

/**
 * What a search for a point off its line found. A point is named, never dropped.
 *
 * <p>The probabilities are of a statistic as large by chance in any of the points tried: n times
 * that of one point (Bonferroni), at most 1.
 */
public sealed interface OutlyingPoint {

  /**
   * One point lies further off than chance explains.
   *
   * @param index its place in the order given, from 0
   * @param statistic its residual in standard deviations, with its sign; infinite where all others
   *     lie on a line to rounding
   * @param probability of that by chance, 0 to the significance asked for
   */
  record Named(int index, double statistic, double probability) implements OutlyingPoint {}

  /**
   * No point lies further off than chance explains.
   *
   * @param probability of the largest residual seen
   */
  record NoneFound(double probability) implements OutlyingPoint {}

  /**
   * Something is off, but more than one point fits the blame as well: always so with three points,
   * whose standardized residuals are alike by geometry.
   *
   * @param statistic the residual that two or more points share, without sign
   * @param probability of that by chance
   */
  record NotAttributable(double statistic, double probability) implements OutlyingPoint {}

  /**
   * The test needs more points.
   *
   * @param points n
   * @param needed the fewest it works with
   */
  record TooFewPoints(int points, int needed) implements OutlyingPoint {}
}
