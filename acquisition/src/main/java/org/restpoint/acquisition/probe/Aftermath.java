package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.util.List;
import org.restpoint.acquisition.check.CheckFailure;
import org.restpoint.acquisition.check.Checkbook;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Result;

/** Notes in the book of checks what an attempt came to, and says what follows from it. */
final class Aftermath {

  private final Checkbook book;
  private final Voice voice;

  Aftermath(Checkbook book, Voice voice) {
    this.book = book;
    this.voice = voice;
  }

  /** An attempt has ended, and its event was said. */
  void of(Instant time, Attempt ended, Event event) {
    if (event instanceof Calibration calibration) {
      if (calibration.verdict() == Calibration.Verdict.ACCEPTED) {
        book.calibrated(time, calibration.slopeFrom().filter("fitted"::equals).isPresent());
      }
    } else if (event instanceof Result result && result.outcome() == Result.Outcome.SETTLED) {
      if (ended.purpose() instanceof Purpose.OfSample) {
        book.sample(result.id());
      } else if (ended.purpose() instanceof Purpose.OfCheck) {
        Checkbook.Consequence consequence = book.checked(result);
        consequence.failure().ifPresent(failure -> tell(time, failure));
        consequence.drifting().ifPresent(reason -> voice.notice(time, reason));
      }
    }
  }

  private void tell(Instant time, CheckFailure failure) {
    List<String> flagged = failure.doubted().stream().filter(voice::keeps).toList();
    for (String id : flagged) {
      voice.revise(time, id, failure.because(), result -> result.withFlag(CheckFailure.FLAG));
    }
    voice.notice(time, failure.notice(flagged));
  }
}
