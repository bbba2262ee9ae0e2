package org.restpoint.acquisition.probe;

import java.time.Instant;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.stability.calibration.Reason;

/** What is said when something did not go on as it was meant to. */
final class Interruptions {

  private Interruptions() {}

  static Reason stopped(String what) {
    return new Reason(
        "interrupted",
        "%s was cut short when the service stopped".formatted(what),
        "Give the instruction again.");
  }

  static Reason gap(Stream.Gap gap) {
    return new Reason(
        "gap",
        "no results from %s to %s: the service was not running".formatted(gap.from(), gap.to()),
        "");
  }

  static Reason clockPutBack(Instant from, Instant to) {
    return new Reason(
        "clock-put-back",
        "the clock went back from %s to %s; what was being read begins again".formatted(from, to),
        "See that the computer's clock is set before the service starts. Times of what came before"
            + " may be wrong.");
  }

  static Reason otherAnalyte(String before, String now) {
    return new Reason(
        "calibration-dropped",
        "the calibrations kept are for %s, and the probe is now set to %s".formatted(before, now),
        "Read the standards: calibrate, once for each standard.");
  }

  static Reason replaced(Instruction.Part part) {
    return new Reason(
        "electrode-replaced",
        "a new %s: the calibration in force has ended, and what was learnt of the response is forgotten"
            .formatted(part.word()),
        "Soak it as its maker says, then read the standards: calibrate, once for each standard.");
  }

  static Reason cancelled() {
    return new Reason("cancelled", "it was cancelled", "");
  }
}
