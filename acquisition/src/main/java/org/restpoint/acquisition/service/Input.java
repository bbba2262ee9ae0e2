package org.restpoint.acquisition.service;

import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.stability.reading.Reading;

/** What the engine takes in, in the order it came. */
sealed interface Input {

  /** A reading from a link. */
  record FromLink(HandOver from, String probe, Reading reading) implements Input {}

  /** A link has something to tell. */
  record Trouble(HandOver from, String probe, LinkTrouble trouble) implements Input {}

  /** An instruction has come. */
  record Told(Message message) implements Input {}

  /**
   * An instruction as it came from the broker.
   *
   * @param probe whom its topic names
   * @param text its payload
   * @param retained whether the broker had kept it from before
   * @param repeated whether the broker has sent it before
   * @param stored to be run once the instruction is in the journal
   */
  record Message(String probe, String text, boolean retained, boolean repeated, Runnable stored) {}
}
