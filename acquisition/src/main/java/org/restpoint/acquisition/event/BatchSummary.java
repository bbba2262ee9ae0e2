package org.restpoint.acquisition.event;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.restpoint.stability.calibration.Reason;

/**
 * What came of a batch, cup by cup.
 *
 * @param id stable over redelivery
 * @param station the station's name
 * @param probe the probe's name
 * @param time when it was ended
 * @param begun when its list was given
 * @param cups all cups, in the order of the list
 * @param left the names of the cups that were never come to, where it was ended early
 */
public record BatchSummary(
    String id,
    String station,
    String probe,
    Instant time,
    Instant begun,
    List<Cup> cups,
    List<String> left)
    implements Event {

  public BatchSummary {
    cups = List.copyOf(cups);
    left = List.copyOf(left);
  }

  /**
   * What came of one cup.
   *
   * @param cup its name
   * @param holds what it holds, in plain words
   * @param outcome how its last reading ended
   * @param skipped whether the batch went on without what it was for
   * @param tries how often it was read
   * @param result the id of the result or calibration of its last reading; absent where none came
   * @param reported what was found, where a number was
   * @param flags the flags of that result or calibration
   * @param reasons why there is no number
   */
  public record Cup(
      String cup,
      String holds,
      Outcome outcome,
      boolean skipped,
      int tries,
      Optional<String> result,
      Optional<Result.Reported> reported,
      List<String> flags,
      List<Reason> reasons) {

    public Cup {
      flags = List.copyOf(flags);
      reasons = List.copyOf(reasons);
    }

    /** One that has not been read. */
    public static Cup unread(String cup, String holds) {
      return new Cup(
          cup,
          holds,
          Outcome.UNREAD,
          false,
          0,
          Optional.empty(),
          Optional.empty(),
          List.of(),
          List.of());
    }

    /** The same, and the batch went on without it. */
    public Cup passedOver() {
      return new Cup(cup, holds, outcome, true, tries, result, reported, flags, reasons);
    }

    /** The same with the flags that its result bears by now. */
    public Cup flagged(List<String> now) {
      return new Cup(cup, holds, outcome, skipped, tries, result, reported, now, reasons);
    }
  }

  /** How the reading of a cup ended. */
  public enum Outcome {
    /** A result with a number. */
    @JsonProperty("settled")
    SETTLED,
    /** Never at rest within its time. */
    @JsonProperty("unsettled")
    UNSETTLED,
    /** No number or no calibration may be given. */
    @JsonProperty("refused")
    REFUSED,
    /** A standard that the calibration now rests on. */
    @JsonProperty("accepted")
    ACCEPTED,
    /** Rinsed in. */
    @JsonProperty("rinsed")
    RINSED,
    /** Not read. */
    @JsonProperty("unread")
    UNREAD
  }
}
