package org.restpoint.stability.fault;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.calibration.ResponseCurve;
import org.restpoint.stability.fault.Finding.Faulty;

/**
 * What can be told of the input without a slope: that nothing is connected to it, or that it is
 * held at zero.
 *
 * @param readings the solutions, in an order that does not depend on how they were given
 * @param slopePercent the slope seen, in percent of the ideal one, where one could be drawn
 */
record InputCheck(List<FaultReading> readings, OptionalDouble slopePercent) {

  Optional<Finding> open() {
    return readings.stream()
        .flatMap(reading -> wild(reading).stream())
        .findFirst()
        .map(
            seen ->
                faulty(
                    Fault.OPEN_INPUT,
                    seen,
                    "Look whether electrode and reference are plugged in and stand in the solution,"
                        + " whether a cable or plug is broken or wet, and whether an air bubble sits"
                        + " at the reference or its electrolyte is dried out."));
  }

  private static Optional<String> wild(FaultReading r) {
    double noise = r.noiseMillivolts().orElse(0);
    double spread = r.spreadMillivolts().orElse(0);
    if (Math.abs(r.millivolts()) > FaultFinder.RAIL_MILLIVOLTS) {
      return Optional.of(
          String.format(
              Locale.ROOT,
              "%s reads %.0f mV, which no electrode in a solution shows",
              r.solution(),
              r.millivolts()));
    }
    if (noise > FaultFinder.WILD_NOISE_MILLIVOLTS) {
      return Optional.of(
          String.format(
              Locale.ROOT,
              "the readings of %s scatter by %.1f mV (standard deviation), like a wire that picks up"
                  + " the mains",
              r.solution(),
              noise));
    }
    return spread > FaultFinder.WILD_SPREAD_MILLIVOLTS
        ? Optional.of(
            String.format(
                Locale.ROOT, "the readings of %s wander over %.0f mV", r.solution(), spread))
        : Optional.empty();
  }

  /**
   * Whether the input is held at zero.
   *
   * @param expectedMillivolts how far apart the known solutions are for an ideal electrode
   */
  Optional<Finding> shorted(double expectedMillivolts, Optional<ResponseCurve> lastLine) {
    boolean atZero =
        readings.stream().allMatch(r -> Math.abs(r.millivolts()) <= FaultFinder.ZERO_MILLIVOLTS);
    if (!atZero || readings.isEmpty()) {
      return Optional.empty();
    }
    return unmoved(expectedMillivolts)
        .or(() -> lastLine.flatMap(this::impossible))
        .map(
            seen ->
                faulty(
                    Fault.SHORTED_INPUT,
                    seen,
                    "Look for water in plug or cable, for electrode and reference touching, for a"
                        + " shorting cap left on the input, and for broken glass or a torn"
                        + " membrane."));
  }

  private static Optional<String> unmoved(double expectedMillivolts) {
    return expectedMillivolts < FaultFinder.LEAST_CHANGE_MILLIVOLTS
        ? Optional.empty()
        : Optional.of(
            String.format(
                Locale.ROOT,
                "all solutions read within %.0f mV of 0, though they are %.0f mV apart for an ideal"
                    + " electrode",
                FaultFinder.ZERO_MILLIVOLTS,
                expectedMillivolts));
  }

  private Optional<String> impossible(ResponseCurve line) {
    FaultReading first = readings.get(0);
    double decades =
        (first.millivolts() - line.offsetMillivolts()) / line.slopeMillivoltsPerDecade();
    return decades <= Math.log10(FaultFinder.IMPOSSIBLE_MOLES_PER_LITRE)
        ? Optional.empty()
        : Optional.of(
            String.format(
                Locale.ROOT,
                "%s reads %.1f mV, by the last calibration 10^%.1f mol/L, more than any solution"
                    + " holds",
                first.solution(),
                first.millivolts(),
                decades));
  }

  private Finding faulty(Fault fault, String seen, String remedy) {
    return new Faulty(fault, slopePercent, new Reason(fault.code(), seen, remedy));
  }
}
