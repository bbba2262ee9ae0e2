package org.restpoint.acquisition.batch;

import java.util.Optional;
import org.restpoint.acquisition.instruction.Cup;
import org.restpoint.stability.calibration.Reason;

/** Why a word is out of order, and which is expected. */
public final class Order {

  private Order() {}

  static Reason busy(Cup cup) {
    return new Reason(
        "busy",
        "%s is still being read".formatted(cup.words()),
        "Wait until it is done, or cancel it.");
  }

  static Reason notRead(Cup cup, Stage stage) {
    return stage == Stage.STANDARD_REFUSED
        ? new Reason(
            "cup-not-read",
            "the standard in %s was refused".formatted(cup.words()),
            "Put a fresh portion of it into cup %s, then: in-place. To go on without it: next skip=true"
                .formatted(cup.name()))
        : new Reason(
            "cup-not-read",
            "%s has not been read".formatted(cup.words()),
            "Put the electrode into it, then: in-place. To leave it out: next skip=true");
  }

  static Reason nextExpected(Optional<Cup> present) {
    return new Reason(
        "next-expected",
        present
            .map(cup -> "%s has been read".formatted(cup.words()))
            .orElse("no cup has been asked for yet"),
        "Say next, move the electrode into the cup that it names, then: in-place.");
  }

  static Reason otherCup(String meant, Cup cup) {
    return new Reason(
        "cup-not-next",
        "cup %s is not the one to read now; that is %s".formatted(meant, cup.words()),
        "Move the electrode into cup %s, then: in-place.".formatted(cup.name()));
  }

  static Reason through() {
    return new Reason("batch-through", "all cups of the batch have come", "Say done.");
  }

  /** There is no batch that a word could be about. */
  public static Reason none() {
    return new Reason("batch-none", "no batch is underway", "Give a list of cups: batch.");
  }

  /** A batch is underway, and this word is for when none is. */
  public static Reason underway(Batch batch, String word) {
    return new Reason(
        "batch-underway",
        "a batch of %d cups is underway, so %s is not carried out"
            .formatted(batch.cups().size(), word),
        "Go on with it: %s To end it: done".formatted(Words.nextStep(batch)));
  }
}
