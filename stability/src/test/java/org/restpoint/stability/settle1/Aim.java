package org.restpoint.stability.settle1;

import java.util.List;
import java.util.Optional;

/**
 * What a setting is chosen for on the tuning set: to be soonest with so many false settles at most,
 * or to have the fewest.
 *
 * @param words in tables
 * @param falseSettles share allowed with |error| > 1 mV; 0 takes the setting with the fewest
 */
record Aim(String words, double falseSettles) {

  static final List<Aim> ALL =
      List.of(
          new Aim("fewest false", 0),
          new Aim("≤ 3 % false", 0.03),
          new Aim("≤ 5 % false", 0.05),
          new Aim("≤ 10 % false", 0.10));

  Optional<Swept> choose(Envelope envelope) {
    return falseSettles == 0 ? envelope.fewestFalse() : envelope.at(falseSettles);
  }
}
