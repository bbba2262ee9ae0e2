package org.restpoint.adapters.link;

import org.restpoint.stability.reading.Reading;

/** Whom a link reports to. Called on the link's own thread; no method blocks or throws. */
public interface LinkListener {

  /**
   * Takes a reading.
   *
   * @return false when the hand-over is full; the link counts the reading as dropped
   */
  boolean reading(Reading reading);

  /** Something a person should know of: a device lost or back, lines that cannot be read. */
  void trouble(LinkTrouble trouble);
}
