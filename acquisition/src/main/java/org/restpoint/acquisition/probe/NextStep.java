package org.restpoint.acquisition.probe;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.restpoint.acquisition.check.CheckPrompt;
import org.restpoint.acquisition.check.Checkbook;
import org.restpoint.acquisition.day.Day;
import org.restpoint.acquisition.day.Place;
import org.restpoint.acquisition.event.State;
import org.restpoint.acquisition.probe.ProbeMemory.InForce;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.calibration.CalibrationOutcome.SlopeBasis;
import org.restpoint.stability.calibration.StandardPoint;

/** Says in plain words what a probe is doing and what the person or the rig does next. */
final class NextStep {

  private static final String RINSE = "Rinse and blot (never wipe), ";

  private final ProbeSettings settings;
  private final CalibrationBook calibrations;
  private final Doorman doorman;
  private final Checkbook checks;

  NextStep(
      ProbeSettings settings, CalibrationBook calibrations, Doorman doorman, Checkbook checks) {
    this.settings = settings;
    this.calibrations = calibrations;
    this.doorman = doorman;
    this.checks = checks;
  }

  State state(
      Instant time,
      Optional<Attempt> attempt,
      DayBook book,
      boolean away,
      int samplesSinceStandard) {
    Day day = book.day();
    Step step =
        attempt.flatMap(Attempt::instruction).isPresent()
            ? reading(attempt.get())
            : ofTheDay(time, book).orElseGet(() -> standing(time, away, samplesSinceStandard));
    return new State(
        settings.station(),
        settings.probe(),
        time,
        step.state(),
        day.place() == Place.SOAKING ? day.soakedFrom() : Optional.empty(),
        settings.care().flatMap(care -> day.outSince()),
        step.next(),
        Optional.empty());
  }

  /**
   * What a probe is doing, and what comes next.
   *
   * @param state the word for it
   * @param next the next step
   */
  private record Step(String state, String next) {}

  /** What the electrode itself needs before anything is read. */
  private Optional<Step> ofTheDay(Instant time, DayBook book) {
    Day day = book.day();
    if (day.place() == Place.SOAKING) {
      Instant end = day.soakedFrom().orElseThrow();
      return step(
          "soaking",
          "Leave the electrode in its soaking solution until %s: %s left."
              .formatted(end, minutes(Duration.between(time, end))));
    }
    if (day.place() == Place.STORED) {
      return step("in storage", "Take the electrode out of storage and soak it: soak");
    }
    if (day.place() == Place.STORED_LONG) {
      return step(
          "in storage",
          "The electrode rests for long: keep it in long-term storage as its maker says (rinsed,"
              + " blotted, capped). To go on: soak");
    }
    if (settings.care().isEmpty()) {
      return Optional.empty();
    }
    if (day.rinseDue()) {
      return step("rinse due", RINSE + "then: rinsed");
    }
    if (day.soakedFrom().isEmpty()) {
      return step(
          "needs soaking",
          "%sPut the electrode into its soaking solution for %s: soak"
              .formatted(out(day), Words.span(book.usualSoak())));
    }
    return Optional.empty();
  }

  private static Optional<Step> step(String state, String next) {
    return Optional.of(new Step(state, next));
  }

  private static String out(Day day) {
    return day.outSince().map("The tip is out of solution since %s. "::formatted).orElse("");
  }

  /** Whole minutes, rounded up, so that nobody is told of none while there is some. */
  private static String minutes(Duration left) {
    return (left.toMillis() + 59_999) / 60_000 + " min";
  }

  private Step standing(Instant time, boolean away, int samplesSinceStandard) {
    if (!calibrations.refused().isEmpty()) {
      return new Step(
          "needs calibration",
          "%s Then: %s%s"
              .formatted(
                  calibrations.refused().get(0).remedy(),
                  calibrate(standardToRead()),
                  calibrations.watch().acceptable().isEmpty()
                      ? ""
                      : " - or go on with it as it is: accept-standard"));
    }
    if (calibrations.inForce().isEmpty()) {
      return new Step(
          "needs calibration",
          "Rinse and blot the electrode, put it into standard %s, then: %s"
              .formatted(standardToRead(), calibrate(standardToRead())));
    }
    if (away) {
      return new Step(
          "out of stream",
          "Rinse and blot the electrode, put it back into the stream, then: rinsed");
    }
    if (!(settings.routine() instanceof Routine.Instructed)) {
      return new Step("in stream", "Nothing to do; results come by themselves.");
    }
    return new Step("ready", next(time, samplesSinceStandard));
  }

  private String next(Instant time, int samplesSinceStandard) {
    boolean slopeDue = doorman.slopeDue(time);
    Optional<String> unread = unreadStandard(slopeDue);
    if (slopeDue) {
      return "A full calibration is due: the slope has not been checked for longer than %s. "
              .formatted(Words.span(settings.calibrate().slopeEvery().orElseThrow()))
          + RINSE
          + into(unread.orElse(settings.calibrate().standards().get(0)));
    }
    if (doorman.standardDue(time, samplesSinceStandard)) {
      return "A standard is due: rinse and blot (never wipe), put the electrode into standard %s, then: "
              .formatted(standardToRead())
          + calibrate(standardToRead());
    }
    String measure = "put the electrode into the sample, then: measure";
    Optional<String> check = CheckPrompt.next(settings.checking().plan(), checks, time);
    if (check.isPresent()) {
      return check.get() + " - or go on: " + measure;
    }
    return unread
        .map(standard -> RINSE + into(standard) + " - or go on: " + measure)
        .orElse(RINSE + measure);
  }

  private static String into(String standard) {
    return "put the electrode into standard %s, then: %s".formatted(standard, calibrate(standard));
  }

  private static String calibrate(String standard) {
    return "calibrate standard=" + standard;
  }

  /** The next standard of a round that means to draw a line and has not read all of them. */
  private Optional<String> unreadStandard(boolean slopeDue) {
    Set<String> read =
        calibrations.round().stream().map(StandardPoint::standard).collect(Collectors.toSet());
    boolean ideal =
        calibrations.inForce().map(InForce::slopeBasis).equals(Optional.of(SlopeBasis.IDEAL));
    return settings.calibrate().standards().stream()
        .filter(standard -> read.size() > 1 || ((ideal || slopeDue) && !read.isEmpty()))
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

  private Step reading(Attempt attempt) {
    String wait = "Leave the electrode still in %s until it is at rest; it is given up after %s.";
    String limit = Words.span(attempt.limit());
    if (attempt.purpose() instanceof Purpose.OfStandard of) {
      return new Step(
          "reading standard", wait.formatted(Words.standard(of.standard().name()), limit));
    }
    if (attempt.purpose() instanceof Purpose.OfCheck of) {
      return new Step("verifying", wait.formatted(of.check().place(), limit));
    }
    return new Step("reading sample", wait.formatted("the sample", limit));
  }
}
