package org.restpoint.acquisition.probe;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.rest.Settling;

/** A result each time the potential comes to rest anew; silence is told as a gap, once. */
final class RestStream implements Stream {

  /**
   * So many readings in a row must lie outside the rest band before the potential is held to have
   * left its rest: one alone, or two, may be a spike. Our choice.
   */
  private static final int READINGS_OUTSIDE = 3;

  private final ProbeSettings settings;
  private final Duration gapAfter;
  private Optional<Instant> lastHeard = Optional.empty();
  private Optional<Double> restMillivolts = Optional.empty();
  private boolean gapTold;
  private int outside;

  RestStream(ProbeSettings settings, Duration gapAfter) {
    this.settings = settings;
    this.gapAfter = gapAfter;
  }

  @Override
  public Optional<Instant> begin(Instant now) {
    lastHeard = Optional.of(now);
    return Optional.empty();
  }

  @Override
  public Optional<Attempt> reading(Instant time, double millivolts, boolean busy) {
    lastHeard = Optional.of(time);
    gapTold = false;
    if (busy || !hasLeftRest(millivolts)) {
      return Optional.empty();
    }
    outside = 0;
    restMillivolts = Optional.empty();
    return Optional.of(Attempt.inStream(time, settings.rule(), settings.limits()));
  }

  private boolean hasLeftRest(double millivolts) {
    if (restMillivolts.isEmpty()) {
      return true;
    }
    double away = Math.abs(millivolts - restMillivolts.get());
    outside = away > settings.rule().restBandMillivolts() ? outside + 1 : 0;
    return outside >= READINGS_OUTSIDE;
  }

  @Override
  public Optional<Instant> due() {
    return gapTold ? Optional.empty() : lastHeard.map(last -> last.plus(gapAfter));
  }

  @Override
  public Happening happen(Instant time, boolean away) {
    gapTold = true;
    restMillivolts = Optional.empty();
    return new Happening(Optional.empty(), away ? Optional.empty() : Optional.of(silence()));
  }

  private Reason silence() {
    return new Reason(
        "no-readings",
        "no reading has come for %s".formatted(Words.span(gapAfter)),
        "Look whether the probe is connected and powered, and at the link's state under health.");
  }

  @Override
  public void ended(Attempt attempt) {
    boolean rested =
        attempt.purpose() instanceof Purpose.OfStream
            && attempt.settling().stage() == Settling.Stage.AT_REST;
    restMillivolts =
        rested ? Optional.of(attempt.settling().potential().millivolts()) : Optional.empty();
  }
}
