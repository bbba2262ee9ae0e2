package org.restpoint.acquisition.station;

import java.time.Duration;
import org.restpoint.acquisition.instruction.Cup;
import org.restpoint.acquisition.probe.Words;
import org.restpoint.stability.calibration.Reason;

/** What is said of a batch besides its answers. */
final class Remarks {

  private Remarks() {}

  static Reason freshStandard(Cup cup) {
    return new Reason(
        "fresh-standard",
        "the standard in %s was refused; the batch waits".formatted(cup.words()),
        "Put a fresh portion of it into cup %s and the electrode into it, then: in-place. To go on without it: next skip=true"
            .formatted(cup.name()));
  }

  static Reason skipped(Cup cup) {
    return new Reason(
        "cup-skipped",
        "%s was left out, as was asked for".formatted(cup.words()),
        "Read it in another batch, where it is wanted.");
  }

  static Reason notSeen(Cup cup, Duration span) {
    return new Reason(
        "move-not-seen",
        "within %s the electrode was not seen to move into %s"
            .formatted(Words.span(span), cup.words()),
        "See which cup it is in; once it is in cup %s: in-place. Moves are not looked for until then."
            .formatted(cup.name()));
  }

  static Reason pulledEarly(Cup cup) {
    return new Reason(
        "pulled-early",
        "the electrode left %s before it was read".formatted(cup.words()),
        "Put it back into cup %s, then: in-place. To go on without it: next skip=true"
            .formatted(cup.name()));
  }
}
