package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.restpoint.acquisition.event.State;
import org.restpoint.acquisition.probe.ProbeMemory.InForce;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.calibration.CalibrationOutcome.SlopeBasis;
import org.restpoint.stability.calibration.StandardPoint;

/** Says in plain words what a probe is doing and what the person or the rig does next. */
final class NextStep {

  private final ProbeSettings settings;
  private final CalibrationBook calibrations;

  NextStep(ProbeSettings settings, CalibrationBook calibrations) {
    this.settings = settings;
    this.calibrations = calibrations;
  }

  State state(
      Instant time,
      Optional<Attempt> attempt,
      Optional<Instant> soakUntil,
      boolean away,
      int samplesSinceStandard) {
    if (attempt.flatMap(Attempt::instruction).isPresent()) {
      return reading(time, attempt.get());
    }
    if (soakUntil.isPresent()) {
      return state(
          time,
          "soaking",
          "Leave the electrode in its soaking solution until %s.".formatted(soakUntil.get()));
    }
    if (!calibrations.refused().isEmpty()) {
      return state(
          time,
          "needs calibration",
          "%s Then: calibrate standard=%s%s"
              .formatted(
                  calibrations.refused().get(0).remedy(),
                  standardToRead(),
                  calibrations.watch().acceptable().isEmpty()
                      ? ""
                      : " - or go on with it as it is: accept-standard"));
    }
    if (calibrations.inForce().isEmpty()) {
      return state(
          time,
          "needs calibration",
          "Rinse and blot the electrode, put it into standard %s, then: calibrate standard=%s"
              .formatted(standardToRead(), standardToRead()));
    }
    if (away) {
      return state(
          time,
          "out of stream",
          "Rinse and blot the electrode, put it back into the stream, then: rinsed");
    }
    if (!(settings.routine() instanceof Routine.Instructed)) {
      return state(time, "in stream", "Nothing to do; results come by themselves.");
    }
    if (new Doorman(settings, calibrations).standardDue(time, samplesSinceStandard)) {
      return state(
          time,
          "ready",
          "A standard is due: rinse and blot (never wipe), put the electrode into standard %s, then:"
                  .formatted(standardToRead())
              + " calibrate standard="
              + standardToRead());
    }
    String measure = "put the electrode into the sample, then: measure";
    Optional<String> unread = unreadStandard();
    if (unread.isPresent()) {
      return state(
          time,
          "ready",
          "Rinse and blot (never wipe), put the electrode into standard %s, then: calibrate standard=%s"
                  .formatted(unread.get(), unread.get())
              + " - or go on: "
              + measure);
    }
    return state(time, "ready", "Rinse and blot (never wipe), " + measure);
  }

  /** The next standard of a round that means to draw a line and has not read all of them. */
  private Optional<String> unreadStandard() {
    Set<String> read =
        calibrations.round().stream().map(StandardPoint::standard).collect(Collectors.toSet());
    boolean ideal =
        calibrations.inForce().map(InForce::slopeBasis).equals(Optional.of(SlopeBasis.IDEAL));
    return settings.calibrate().standards().stream()
        .filter(standard -> read.size() > 1 || (ideal && !read.isEmpty()))
        .filter(standard -> !read.contains(standard))
        .findFirst();
  }

  private String standardToRead() {
    if (calibrations.standardAgain().isPresent()) {
      return calibrations.standardAgain().get();
    }
    if (calibrations.refused().isEmpty()
        && calibrations.inForce().isPresent()
        && settings.calibrate().restandardize().isPresent()) {
      return settings.calibrate().restandardize().get();
    }
    return settings.calibrate().standards().get(0);
  }

  private State reading(Instant time, Attempt attempt) {
    String wait = "Leave the electrode still in %s until it is at rest; it is given up after %s.";
    String limit = Words.span(attempt.limit());
    if (attempt.purpose() instanceof Purpose.OfStandard of) {
      return state(
          time, "reading standard", wait.formatted("standard " + of.standard().name(), limit));
    }
    if (attempt.purpose() instanceof Purpose.OfCheck of) {
      return state(time, "verifying", wait.formatted("standard " + of.standard().name(), limit));
    }
    return state(time, "reading sample", wait.formatted("the sample", limit));
  }

  private State state(Instant time, String state, String nextStep) {
    return new State(settings.station(), settings.probe(), time, state, nextStep);
  }
}
