package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.util.Optional;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.probe.ProbeMemory.InForce;

/** What follows when a reading has ended: it is told, and other results with it. */
final class Closing {

  private final Reckoning reckoning;
  private final CalibrationBook calibrations;
  private final Replies replies;
  private final Response response;
  private final Brackets brackets;
  private final Voice voice;

  Closing(
      Reckoning reckoning,
      CalibrationBook calibrations,
      Replies replies,
      Response response,
      Brackets brackets,
      Voice voice) {
    this.reckoning = reckoning;
    this.calibrations = calibrations;
    this.replies = replies;
    this.response = response;
    this.brackets = brackets;
    this.voice = voice;
  }

  /** A reading has ended. Of a private one nothing is remembered. */
  void of(Instant time, Attempt ended) {
    Optional<InForce> before = calibrations.inForce();
    Event event = reckoning.ended(time, ended);
    replies.ended(time, ended, event);
    if (ended.isConfidential()) {
      return;
    }
    new Aftermath(reckoning.checks(), voice).of(time, ended, event);
    if (event instanceof Result result) {
      brackets.read(ended, result);
    } else if (event instanceof Calibration calibration
        && calibration.verdict() == Calibration.Verdict.ACCEPTED) {
      brackets.calibrated(time, before, calibrations.inForce().orElseThrow());
    }
    response.learn(ended, event).ifPresent(changed -> voice.notice(time, changed));
  }

  /** The operator accepts the refused round of standards as it is; it ends no bracket. */
  Calibration accepted(Instant time, Optional<String> because) {
    Calibration calibration = reckoning.accepted(time, because);
    voice.event(calibration);
    calibration.remarks().stream()
        .filter(remark -> remark.code().equals(CalibrationBook.OVERRIDDEN))
        .forEach(remark -> voice.notice(time, remark));
    brackets.endNone();
    return calibration;
  }
}
