package org.restpoint.adapters.outbox;

import java.util.Collection;
import java.util.List;

/** Messages committed and not yet acknowledged by a broker, oldest first. */
public interface Outbox {

  /** At most {@code limit} messages with a sequence number above {@code after}, in order. */
  List<OutboxMessage> unsent(long after, int limit);

  /** Removes messages that a broker has acknowledged; unknown numbers are passed over. */
  void remove(Collection<Long> sequences);

  /** How many messages wait. */
  long waiting();
}
