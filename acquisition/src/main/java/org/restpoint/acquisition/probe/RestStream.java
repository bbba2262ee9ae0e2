package org.restpoint.acquisition.probe;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.probe.ProbeMemory.InStream;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.rest.Settling;

/**
 * A result each time the potential comes to rest anew; silence is told as a gap, once. After a
 * restart the silence is counted from the restart.
 */
final class RestStream implements Stream {

  /**
   * So many readings in a row must lie outside the rest band before the potential is held to have
   * left its rest: one alone, or two, may be a spike. Our choice.
   */
  private static final int READINGS_OUTSIDE = 3;

  private final ProbeSettings settings;
  private final Response response;
  private final Duration gapAfter;
  private Optional<Instant> lastHeard = Optional.empty();
  private Optional<Attempt> attempt = Optional.empty();
  private OptionalDouble restMillivolts;
  private int outside;
  private boolean gapTold;

  RestStream(
      ProbeSettings settings, Duration gapAfter, Optional<InStream> before, Response response) {
    this.settings = settings;
    this.response = response;
    this.gapAfter = gapAfter;
    this.restMillivolts = before.map(InStream::restMillivolts).orElse(OptionalDouble.empty());
    this.outside = before.map(InStream::readingsOutside).orElse(0);
    this.gapTold = before.map(InStream::gapTold).orElse(false);
  }

  @Override
  public Optional<Gap> begin(Instant now) {
    lastHeard = Optional.of(now);
    return Optional.empty();
  }

  @Override
  public Optional<Attempt> reading(Instant time, double millivolts, boolean busy) {
    lastHeard = Optional.of(time);
    gapTold = false;
    settle();
    if (busy) {
      forgetRest();
      return Optional.empty();
    }
    if (!hasLeftRest(millivolts)) {
      return Optional.empty();
    }
    forgetRest();
    attempt =
        Optional.of(
            Attempt.inStream(
                time, response.watch(), settings.limits(), settings.limits().giveUpAfter()));
    return attempt;
  }

  /** Takes over where its last attempt came to rest. */
  private void settle() {
    Optional<Settling> rested =
        attempt.map(Attempt::settling).filter(s -> s.stage() == Settling.Stage.AT_REST);
    if (rested.isPresent()) {
      restMillivolts = OptionalDouble.of(rested.get().potential().millivolts());
      attempt = Optional.empty();
    }
  }

  private void forgetRest() {
    restMillivolts = OptionalDouble.empty();
    outside = 0;
  }

  private boolean hasLeftRest(double millivolts) {
    if (restMillivolts.isEmpty()) {
      return true;
    }
    double distance = Math.abs(millivolts - restMillivolts.getAsDouble());
    outside = distance > response.restBandMillivolts() ? outside + 1 : 0;
    return outside >= READINGS_OUTSIDE;
  }

  /** A reading exactly {@code gapAfter} after the last is no gap yet, hence the millisecond. */
  @Override
  public Optional<Instant> due() {
    return gapTold ? Optional.empty() : lastHeard.map(last -> last.plus(gapAfter).plusMillis(1));
  }

  @Override
  public Happening happen(Instant time, boolean away) {
    settle();
    forgetRest();
    if (away) {
      lastHeard = Optional.of(time);
      return new Happening(Optional.empty(), Optional.empty());
    }
    gapTold = true;
    return new Happening(Optional.empty(), Optional.of(silence()));
  }

  private Reason silence() {
    return new Reason(
        "no-readings",
        "no reading has come for %s".formatted(Words.span(gapAfter)),
        "Look whether the probe is connected and powered, and at the link's state under health.");
  }

  @Override
  public InStream memory() {
    settle();
    return new InStream(Optional.empty(), restMillivolts, outside, gapTold);
  }
}
