package org.restpoint.config.station;

import java.time.Duration;

/**
 * How an electrode is looked after at the bench, where somebody tells what is done with it.
 *
 * @param soak how long it soaks after it was stored or has dried, above zero
 * @param dryAfter how long its tip may be out of solution before it counts as dried, above zero
 * @param longRest a rest that is longer asks for long-term storage, above zero
 */
public record Care(Duration soak, Duration dryAfter, Duration longRest) {

  /** Checks that the spans are spans. */
  public Care {
    for (Duration span : new Duration[] {soak, dryAfter, longRest}) {
      if (span.isNegative() || span.isZero()) {
        throw new IllegalArgumentException("a span above zero, not " + span);
      }
    }
  }
}
