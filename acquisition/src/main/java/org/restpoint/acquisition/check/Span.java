package org.restpoint.acquisition.check;

import java.time.Instant;
import java.util.Optional;
import org.restpoint.acquisition.event.CheckRole;

/**
 * The samples that no check of one role vouches for yet.
 *
 * @param role the role
 * @param opened what it began with
 * @param since when it began; empty where that was before anything was noted
 * @param samples how many samples were measured since
 */
public record Span(CheckRole role, Opened opened, Optional<Instant> since, int samples) {

  /** What a span began with. */
  public enum Opened {
    /** The calibration: no check of this role has been given since. */
    CALIBRATED,
    /** A check that passed. */
    PASSED,
    /** A check that failed. */
    FAILED,
    /** A check that failed, and a calibration was accepted since. */
    RECALIBRATED
  }

  static Span begin(CheckRole role) {
    return new Span(role, Opened.CALIBRATED, Optional.empty(), 0);
  }

  Span withSample() {
    return new Span(role, opened, since, samples + 1);
  }

  Span checked(Instant time, boolean passed) {
    return new Span(role, passed ? Opened.PASSED : Opened.FAILED, Optional.of(time), 0);
  }

  /**
   * A calibration was accepted. It mends what a check standard finds, and nothing of what the other
   * roles do. As long as no check standard was read, its span begins with the calibration whose
   * slope was measured last.
   */
  Span calibrated(Instant time, boolean slopeMeasured) {
    if (role == CheckRole.CHECK_STANDARD && opened == Opened.FAILED) {
      return new Span(role, Opened.RECALIBRATED, since, samples);
    }
    boolean begins = since.isEmpty() || (role == CheckRole.CHECK_STANDARD && slopeMeasured);
    return opened == Opened.CALIBRATED && begins
        ? new Span(role, opened, Optional.of(time), since.isEmpty() ? samples : 0)
        : this;
  }

  boolean isFailed() {
    return opened == Opened.FAILED;
  }

  /** Where it began, for a person. */
  String words() {
    String when = since.map(Instant::toString).orElse("");
    return switch (opened) {
      case CALIBRATED -> since.isEmpty() ? "so far" : "since the calibration of " + when;
      case PASSED -> "since the one of " + when + " that passed";
      case FAILED, RECALIBRATED -> "since the one of " + when + " that failed";
    };
  }
}
