package org.restpoint.acquisition.sample;

import java.util.List;

/** A sample's record that cannot be taken; the message is for the person who gave it. */
public final class SampleException extends RuntimeException {

  private static final long serialVersionUID = 1;

  private final transient List<String> problems;

  /** With each thing that is wrong. */
  public SampleException(List<String> problems) {
    super(String.join("; ", problems));
    this.problems = List.copyOf(problems);
  }

  /** Each thing that is wrong. */
  public List<String> problems() {
    return problems;
  }
}
