package org.restpoint.acquisition.check;

import java.time.Instant;
import java.util.Optional;
import org.restpoint.acquisition.event.CheckRole;

/** Says which check to give next and how; names no sample, as what it says stays on a topic. */
public final class CheckPrompt {

  private CheckPrompt() {}

  /** What to do about the check that failed or is due; empty where none is. */
  public static Optional<String> next(CheckPlan plan, Checkbook book, Instant time) {
    return book.failed()
        .map(role -> "The last %s failed: %s".formatted(role.spoken(), how(role, plan)))
        .or(
            () ->
                book.due(time)
                    .map(role -> "A %s is due: %s".formatted(role.spoken(), how(role, plan))));
  }

  private static String how(CheckRole role, CheckPlan plan) {
    String into = "rinse and blot (never wipe), put the electrode into ";
    String standard = plan.standard().orElse("NAME");
    return switch (role) {
      case CHECK_STANDARD ->
          into
              + "a fresh portion of standard %s, then: verify role=check-standard standard=%s"
                  .formatted(standard, standard);
      case BLANK ->
          "take a sample of nothing through the whole preparation, %sit, then: verify role=blank"
              .formatted(into);
      case DUPLICATE ->
          "prepare another portion of a sample measured before, %sit, then: verify role=duplicate sample=NUMBER"
              .formatted(into);
      case SPIKE ->
          "add %s of a sample measured before, %sit, then: verify role=spike sample=NUMBER"
              .formatted(
                  plan.spike().map(CheckPlan.SpikeTerms::words).orElse("a known amount"), into);
    };
  }
}
