package org.restpoint.adapters.bus;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.wire.WireSource.Attempt.Refused;

/**
 * Decides what is worth telling about a wire: the first refusal at once, another one when two
 * attempts in a row agree on it (a device just plugged in is often not permitted for a moment),
 * none twice, and after a loss not that the device is away.
 *
 * <p>A loss while nobody was being asked is told only when the wire cannot be opened again at once:
 * a network device may end a connection that is idle, and nothing is lost with it.
 */
final class WireNews {

  private @Nullable LinkTrouble told;
  private @Nullable LinkTrouble latest;
  private @Nullable LinkTrouble unsaid;
  private boolean awayIsKnown;

  /** The wire could not be opened; what is to be told now. */
  Optional<LinkTrouble> refused(Refused refused) {
    if (unsaid != null) {
      return Optional.of(lost(unsaid));
    }
    LinkTrouble trouble = refused.trouble();
    boolean known = trouble.equals(told) || (awayIsKnown && refused.away());
    boolean worthTelling = !known && (told == null || trouble.equals(latest));
    latest = trouble;
    if (!worthTelling) {
      return Optional.empty();
    }
    told = trouble;
    awayIsKnown = refused.away();
    return Optional.of(trouble);
  }

  /** The wire is open and works; true when a refusal or a loss had been told before. */
  boolean works() {
    boolean wasTold = told != null;
    told = null;
    latest = null;
    unsaid = null;
    awayIsKnown = false;
    return wasTold;
  }

  /** The wire was lost while somebody was asked, which is to be told now. */
  LinkTrouble lost(LinkTrouble loss) {
    told = loss;
    latest = loss;
    unsaid = null;
    awayIsKnown = true;
    return loss;
  }

  /** The wire was lost while nobody was asked. */
  void lostIdle(LinkTrouble loss) {
    unsaid = loss;
  }
}
