package org.restpoint.stability.guidance;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a table says of the numbers from one limit to the next. The lower limit belongs to the band,
 * the upper one does not.
 *
 * @param from the lower limit, in the table's unit; empty for the lowest band
 * @param below the upper limit; empty for the highest band
 * @param says what such a number means
 * @param caution what to mind, where there is something of its own
 */
public record Band(
    OptionalDouble from, OptionalDouble below, String says, Optional<String> caution) {

  /** Whether a number may be in it, by what is known of the number. */
  boolean isReachedBy(Found found) {
    double lower = from.orElse(Double.NEGATIVE_INFINITY);
    double upper = below.orElse(Double.POSITIVE_INFINITY);
    boolean fromBelow =
        found.relation() == Relation.BELOW ? found.highest() > lower : found.highest() >= lower;
    return fromBelow && found.lowest() < upper;
  }
}
