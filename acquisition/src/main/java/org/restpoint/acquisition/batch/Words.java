package org.restpoint.acquisition.batch;

import java.util.Optional;
import org.restpoint.acquisition.instruction.Cup;

/** The next step of a batch in plain words. */
public final class Words {

  private Words() {}

  /** What the person or the rig does next. */
  public static String nextStep(Batch batch) {
    Optional<Cup> present = batch.present();
    return switch (batch.stage()) {
      case THROUGH -> "All cups have come; say: done";
      case READING ->
          "Leave the electrode still in %s until it is at rest.".formatted(words(present));
      case MOVING -> "Move the electrode to %s, then: in-place".formatted(words(present));
      case STANDARD_REFUSED ->
          "Put a fresh portion of the standard into %s and the electrode into it, then: in-place - or go on without it: next skip=true"
              .formatted(words(present));
      case BETWEEN -> between(batch);
    };
  }

  private static String between(Batch batch) {
    if (batch.present().isEmpty()) {
      return "The list of %d cups is taken; when ready to move, say: next"
          .formatted(batch.cups().size());
    }
    String cup = words(batch.present());
    return batch.mayBeReadAgain()
        ? "Nothing came of %s; read it again: in-place - or go on: next".formatted(cup)
        : "Done with %s; when ready to move, say: next".formatted(cup);
  }

  private static String words(Optional<Cup> cup) {
    return cup.map(Cup::words).orElseThrow();
  }
}
