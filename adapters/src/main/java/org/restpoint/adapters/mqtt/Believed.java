package org.restpoint.adapters.mqtt;

import java.time.Instant;
import org.restpoint.adapters.quantity.Parsed;
import org.restpoint.stability.reading.Reading;

/** A reading of what was parsed, or the rejection of its message. */
final class Believed {

  private Believed() {}

  static Reading reading(Parsed parsed, Instant time) throws RejectedMessageException {
    if (parsed instanceof Parsed.Rejected rejected) {
      throw new RejectedMessageException(rejected.reason());
    }
    return ((Parsed.Values) parsed).at(time);
  }
}
