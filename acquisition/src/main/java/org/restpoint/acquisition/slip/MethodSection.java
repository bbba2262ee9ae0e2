package org.restpoint.acquisition.slip;

import java.util.Locale;
import org.restpoint.acquisition.event.Preparation;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.CalibrationUsed;

/** How it was measured. */
final class MethodSection {

  private static final double MINUTE = 60;
  private static final double HOUR = 60 * MINUTE;
  private static final double DAY = 24 * HOUR;

  private MethodSection() {}

  static Slip.Section of(Result result, Subject subject) {
    return new Parts("How")
        .fact("Electrode", result.probe())
        .fact("Read", subject.time(result.time()))
        .fact("Prepared", result.preparation().map(Preparation::text))
        .fact("Rest", rest(result))
        .fact("Rule", result.rule())
        .fact(
            "Solution",
            result.celsius().isPresent()
                ? tenths(result.celsius().getAsDouble()) + AmountWords.NO_BREAK + "°C"
                : "")
        .fact("Slope", result.calibration().map(MethodSection::slope))
        .fact(
            "Standard",
            result.calibration().map(used -> "read %s before".formatted(span(used.ageSeconds()))))
        .section();
  }

  private static String rest(Result result) {
    if (result.readings() == 0) {
      return "no reading was taken";
    }
    String taken =
        "%d %s in %s"
            .formatted(
                result.readings(),
                result.readings() == 1 ? "reading" : "readings",
                span(result.elapsedSeconds()));
    if (result.millivolts().isEmpty()) {
      return "not at rest after " + taken;
    }
    String millivolts = tenths(result.millivolts().getAsDouble()) + AmountWords.NO_BREAK + "mV";
    return result.forecast()
        ? "foretold at %s from %s".formatted(millivolts, taken)
        : "at rest at %s after %s".formatted(millivolts, taken);
  }

  private static String slope(CalibrationUsed used) {
    return tenths(used.slopePercent()) + " % of the ideal";
  }

  private static String tenths(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }

  /** A span for people, in whole numbers of the unit in which it is at least 2. */
  static String span(double seconds) {
    if (seconds < 2 * MINUTE) {
      return Math.round(seconds) + AmountWords.NO_BREAK + "s";
    }
    if (seconds < 2 * HOUR) {
      return Math.round(seconds / MINUTE) + AmountWords.NO_BREAK + "min";
    }
    return seconds < 2 * DAY
        ? Math.round(seconds / HOUR) + AmountWords.NO_BREAK + "h"
        : Math.round(seconds / DAY) + AmountWords.NO_BREAK + "days";
  }
}
