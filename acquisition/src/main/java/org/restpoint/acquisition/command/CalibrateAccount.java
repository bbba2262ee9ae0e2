package org.restpoint.acquisition.command;

import java.util.ArrayList;
import java.util.List;
import org.restpoint.acquisition.probe.Words;
import org.restpoint.config.station.Calibrate;
import org.restpoint.config.station.SettleRule.Within;

/** Says back how an electrode is calibrated and when a standard is refused. */
final class CalibrateAccount {

  private CalibrateAccount() {}

  static List<String> of(Calibrate calibrate) {
    List<String> lines = new ArrayList<>();
    lines.add(
        "calibrated with %s%s%s; slope %s to %s %% of ideal; valid for %s"
            .formatted(
                String.join(", ", calibrate.standards()),
                calibrate.restandardize().map(name -> ", again with " + name).orElse(""),
                every(calibrate.every()),
                Words.number(calibrate.slopePercentLow()),
                Words.number(calibrate.slopePercentHigh()),
                Words.span(calibrate.validFor())));
    lines.add(
        "a standard is refused that reads more than %s from what is expected of it"
            .formatted(within(calibrate.movedWithin())));
    calibrate
        .slopeEvery()
        .ifPresent(span -> lines.add("the slope is due to be measured every " + Words.span(span)));
    if (calibrate.bracket()) {
      lines.add("results between two readings of its standard are said again with the offset then");
    }
    return lines;
  }

  private static String every(Calibrate.Every every) {
    if (every instanceof Calibrate.Every.Samples samples) {
      return ", a standard before every "
          + (samples.samples() == 1 ? "sample" : samples.samples() + " samples");
    }
    return every instanceof Calibrate.Every.Span span
        ? ", a standard every " + Words.span(span.span())
        : "";
  }

  private static String within(Within limit) {
    return limit instanceof Within.Millivolts millivolts
        ? Words.number(millivolts.millivolts()) + " mV"
        : Words.number(((Within.Percent) limit).percent()) + " % of its concentration";
  }
}
