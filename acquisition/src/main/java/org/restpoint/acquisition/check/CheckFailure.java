package org.restpoint.acquisition.check;

import java.time.Instant;
import java.util.List;
import org.restpoint.acquisition.event.Result.Verification;
import org.restpoint.stability.calibration.Reason;

/**
 * A check that failed, and what it puts in doubt.
 *
 * @param check what it showed
 * @param time when
 * @param span the samples that no check of its role vouched for
 * @param doubted the results of those that are still known, oldest first
 * @param beyond how many more there were
 */
public record CheckFailure(
    Verification check, Instant time, Span span, List<String> doubted, int beyond) {

  /** What the results that it doubts are flagged with. */
  public static final String FLAG = "check-failed-after";

  /** So many results are listed; more are told by the first and the last. */
  private static final int MOST_LISTED = 12;

  public CheckFailure {
    doubted = List.copyOf(doubted);
  }

  /** Why a result is flagged. */
  public String because() {
    return "the %s of %s failed: %s".formatted(check.role().spoken(), time, check.text());
  }

  /**
   * What a person is told.
   *
   * @param flagged the results that were flagged
   */
  public Reason notice(List<String> flagged) {
    return new Reason(
        "check-failed",
        "the %s failed: %s. %s".formatted(check.role().spoken(), check.text(), results(flagged)),
        CheckCauses.of(check));
  }

  private String results(List<String> flagged) {
    String which =
        flagged.size() <= MOST_LISTED
            ? String.join(", ", flagged)
            : flagged.get(0) + " to " + flagged.get(flagged.size() - 1);
    String told =
        switch (flagged.size()) {
          case 0 -> "No result of a sample %s is there to be flagged".formatted(span.words());
          case 1 ->
              "The result of 1 sample %s is flagged %s: %s".formatted(span.words(), FLAG, which);
          default ->
              "The results of %d samples %s are flagged %s: %s"
                  .formatted(flagged.size(), span.words(), FLAG, which);
        };
    return beyond == 0
        ? told
        : told
            + "; %d earlier ones are not, as no more than %d are remembered: flag them by hand"
                .formatted(beyond, Checkbook.MOST_RESULTS);
  }
}
