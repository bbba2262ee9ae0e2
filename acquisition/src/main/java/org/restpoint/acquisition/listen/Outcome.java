package org.restpoint.acquisition.listen;

import java.util.List;

/** What listening came to. */
public sealed interface Outcome {

  /**
   * What was heard can be read.
   *
   * @param section the section of a station file that reads it
   */
  record Understood(List<String> section) implements Outcome {

    public Understood {
      section = List.copyOf(section);
    }
  }

  /** Nothing came, or nothing that can be read; the person was told. */
  record NotUnderstood() implements Outcome {}

  /**
   * There was no listening.
   *
   * @param words why, and what to do about it
   */
  record NotOpened(String words) implements Outcome {}
}
