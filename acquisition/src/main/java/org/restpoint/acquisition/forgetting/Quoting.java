package org.restpoint.acquisition.forgetting;

import java.util.Set;

/** Troubles of a link that quote what came over the wire, or may. */
public final class Quoting {

  /** Their codes. */
  public static final Set<String> CODES =
      Set.of(
          "line-rejected",
          "line-too-long",
          "message-rejected",
          "message-duplicate",
          "message-unclaimed",
          "answer-rejected",
          "checksum-wrong",
          "channel-unclaimed",
          "unasked-bytes",
          "lines-skipped");

  private Quoting() {}
}
