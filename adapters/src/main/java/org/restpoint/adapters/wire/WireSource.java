package org.restpoint.adapters.wire;

import org.restpoint.adapters.link.LinkTrouble;

/** Where a wire can be had, again and again: a device may be absent, busy or lost. */
public interface WireSource {

  /** What it is, for messages: {@code serial port /dev/ttyUSB0}. */
  String name();

  /** Tries once to open it; whoever gets a wire closes it. */
  Attempt open();

  /** What trying to open came to. */
  sealed interface Attempt {

    /**
     * It is open.
     *
     * @param wire the connection
     */
    record Opened(Wire wire) implements Attempt {}

    /**
     * It is not open.
     *
     * @param trouble why, and what to do about it
     */
    record Refused(LinkTrouble trouble) implements Attempt {}
  }
}
