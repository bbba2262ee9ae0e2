package org.restpoint.acquisition.probe;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.rest.RestProgress;
import org.restpoint.stability.rest.forecast.Forecast;

/** Says why a reading never came to rest. */
final class Unrest {

  private Unrest() {}

  /** Why an attempt was given up, for a person, and what its readings say of the input. */
  static List<Reason> why(Attempt attempt, ProbeSettings settings) {
    if (attempt.settling().taken() == 0) {
      return List.of(
          new Reason(
              "no-readings",
              "no reading came within %s".formatted(Words.span(attempt.limit())),
              "Look whether the probe is connected and switched on, and at the link's state under"
                  + " health."));
    }
    RestProgress seen = attempt.settling().progress();
    List<Reason> reasons =
        new ArrayList<>(List.of(notAtRest(attempt, seen, settings.rule().describe())));
    Faults.ofUnsettled(seen, settings.analyte().charge()).ifPresent(reasons::add);
    return reasons;
  }

  private static Reason notAtRest(Attempt attempt, RestProgress seen, String rule) {
    String drift =
        seen.driftMillivoltsPerMinute().isPresent()
            ? ", drifting %s mV/min"
                .formatted(Words.number(seen.driftMillivoltsPerMinute().getAsDouble()))
            : "";
    String missing =
        seen.members().stream()
            .filter(member -> !member.progress().atRest())
            .map(RestProgress.Member::rule)
            .collect(Collectors.joining(", "));
    return new Reason(
        "unsettled",
        "not at rest within %s: %s, the last of them spread over %s mV%s%s; the rule is %s%s"
            .formatted(
                Words.span(attempt.limit()),
                seen.readings() == 1 ? "1 reading" : seen.readings() + " readings",
                Words.number(seen.spreadMillivolts()),
                drift,
                foreseen(seen).map(Unrest::whereItWent).orElse(""),
                rule,
                missing.isEmpty() ? "" : ", and what does not hold is " + missing),
        "Look for an air bubble under the tip, stir evenly or not at all, let the solution come to"
            + " the temperature of the standards, soak the electrode; then read again.");
  }

  /** The forecast of the rule, or of the first in a combination that has one. */
  private static Optional<Forecast> foreseen(RestProgress seen) {
    Stream<Forecast> ofMembers =
        seen.members().stream().flatMap(member -> foreseen(member.progress()).stream());
    return Stream.concat(seen.forecast().stream(), ofMembers).findFirst();
  }

  private static String whereItWent(Forecast forecast) {
    return ", going to %s \u00b1 %s mV (k = 1)"
        .formatted(
            Words.number(forecast.millivolts()),
            Words.number(forecast.standardUncertaintyMillivolts()));
  }
}
