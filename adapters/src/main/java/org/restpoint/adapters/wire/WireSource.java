package org.restpoint.adapters.wire;

import org.restpoint.adapters.link.LinkTrouble;

/** Where a wire can be had, again and again: a device may be absent, busy or lost. */
public interface WireSource {

  /** What it is, for messages: {@code serial port /dev/ttyUSB0}. */
  String name();

  /**
   * Tries once to open it; whoever gets a wire closes it.
   *
   * @param farewell is run, on any thread, when the process ends, before the wire ends with it: an
   *     end that is meant is not to be taken for a loss. Where a wire stays open to the last it is
   *     not run.
   */
  Attempt open(Runnable farewell);

  /** What to tell when an open wire was lost. */
  LinkTrouble lost();

  /** What to tell when it is back after a loss or a refusal. */
  LinkTrouble back();

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
     * @param away whether that is all: the device is not there, or does not answer. After a loss it
     *     is nothing new
     */
    record Refused(LinkTrouble trouble, boolean away) implements Attempt {}
  }
}
