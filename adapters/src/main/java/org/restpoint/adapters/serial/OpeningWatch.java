package org.restpoint.adapters.serial;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Decides which outcomes of opening are worth telling: the first at once, another one when two
 * attempts in a row agree on it (a device just plugged in is often not permitted for a moment,
 * until the system has set its rights), and none twice.
 */
final class OpeningWatch {

  private @Nullable PortFailure told;
  private @Nullable PortFailure latest;

  /** The port did not open; the failure, if it is to be told now. */
  Optional<PortFailure> refused(PortFailure failure) {
    boolean worthTelling = !failure.equals(told) && (told == null || failure.equals(latest));
    latest = failure;
    if (!worthTelling) {
      return Optional.empty();
    }
    told = failure;
    return Optional.of(failure);
  }

  /** The port is open; true when a failure or a loss had been told before. */
  boolean opened() {
    boolean wasTold = told != null;
    told = null;
    latest = null;
    return wasTold;
  }

  /** The port was lost, and that is told: that it is absent from now on is nothing new. */
  void lost() {
    told = new PortFailure.Absent();
    latest = told;
  }
}
