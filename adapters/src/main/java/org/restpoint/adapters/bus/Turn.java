package org.restpoint.adapters.bus;

import java.time.Duration;
import org.restpoint.adapters.wire.Wire;

/** A probe's turn on the wire that it shares with others. */
public interface Turn {

  /** The open wire. */
  Wire wire();

  /** A monotonic clock in nanoseconds. */
  long nanos();

  /**
   * Waits, while no other probe is asked.
   *
   * @param span how long; not at all when zero or less
   * @return true, and at once, when the turn is over
   * @throws InterruptedException when somebody wants the thread to end
   */
  boolean pause(Duration span) throws InterruptedException;

  /** Whether nobody waits for the outcome any more: the bus is being closed. */
  boolean isOver();
}
