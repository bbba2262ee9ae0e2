package org.restpoint.acquisition.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.restpoint.acquisition.probe.Words;
import org.restpoint.config.station.Calibrate.Every;
import org.restpoint.config.station.Checks;
import org.restpoint.config.station.Checks.Recovery;

/** Says back what a station file says of checks, where it says something. */
final class ChecksAccount {

  private ChecksAccount() {}

  static List<String> of(Checks checks) {
    List<String> lines = new ArrayList<>();
    checks
        .checkStandard()
        .ifPresent(
            one ->
                lines.add(
                    "checked with %s%s%s"
                        .formatted(
                            one.standard().map(name -> "standard " + name).orElse("a standard"),
                            every(one.every()),
                            recovery(one.recovery()))));
    checks
        .blank()
        .ifPresent(
            one ->
                lines.add(
                    "checked with a blank%s%s"
                        .formatted(
                            every(one.every()),
                            one.below()
                                .map(
                                    below ->
                                        ", below %s %s"
                                            .formatted(Words.number(below.value()), below.unit()))
                                .orElse(""))));
    checks.duplicate().ifPresent(one -> lines.add("checked with a duplicate" + every(one.every())));
    checks
        .spike()
        .ifPresent(
            one ->
                lines.add(
                    "checked with a spike%s: %s mL of %s %s to %s mL%s"
                        .formatted(
                            every(one.every()),
                            Words.number(one.addsMillilitres()),
                            Words.number(one.of().value()),
                            one.of().unit(),
                            Words.number(one.intoMillilitres()),
                            recovery(one.recovery()))));
    return lines;
  }

  private static String every(Every every) {
    if (every instanceof Every.Samples samples) {
      return samples.samples() == 1
          ? " after every sample"
          : " after every %d samples".formatted(samples.samples());
    }
    return every instanceof Every.Span span ? " every " + Words.span(span.span()) : "";
  }

  private static String recovery(Optional<Recovery> recovery) {
    return recovery
        .map(
            limits ->
                ", recovery %s to %s %%"
                    .formatted(
                        Words.number(limits.lowPercent()), Words.number(limits.highPercent())))
        .orElse("");
  }
}
