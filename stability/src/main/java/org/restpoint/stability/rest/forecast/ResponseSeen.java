package org.restpoint.stability.rest.forecast;

import java.util.List;

/**
 * What one reading has told of an electrode's response: what a {@link ResponsePrior} is learnt
 * from.
 *
 * @param restMillivolts where it came to rest
 * @param rising whether it rose to its rest since it set out, or since it was last disturbed
 * @param seconds how long it was seen for since then
 * @param weights how likely each response curve is after it, of all 1, in the order of a prior
 */
public record ResponseSeen(
    double restMillivolts, boolean rising, double seconds, List<Double> weights) {

  public ResponseSeen {
    weights = List.copyOf(weights);
  }
}
