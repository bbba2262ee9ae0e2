package org.restpoint.acquisition.probe;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.stability.calibration.CalibrationOutcome;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.calibration.ResponseCurve;
import org.restpoint.stability.calibration.StandardPoint;
import org.restpoint.stability.fault.Fault;
import org.restpoint.stability.fault.FaultFinder;
import org.restpoint.stability.fault.FaultReading;
import org.restpoint.stability.fault.Finding.Faulty;
import org.restpoint.stability.rest.RestProgress;

/** Names what is broken between electrode and meter, where readings show it. */
final class Faults {

  private Faults() {}

  /**
   * A refused round with the fault that explains it in front. A reversed slope names itself.
   *
   * @param charge charge number of the ion
   * @param before the calibration in force before the round
   */
  static CalibrationOutcome explained(
      CalibrationOutcome outcome, int charge, Optional<ResponseCurve> before) {
    if (outcome.accepted()) {
      return outcome;
    }
    List<FaultReading> readings =
        outcome.points().stream()
            .map(
                point ->
                    FaultReading.standard(
                        "standard " + point.standard(),
                        Math.log10(point.molesPerLitre()),
                        point.millivolts()))
            .toList();
    double celsius =
        outcome.points().stream().mapToDouble(StandardPoint::celsius).average().orElse(25);
    return new FaultFinder(charge, celsius).find(readings, before) instanceof Faulty faulty
            && faulty.fault() != Fault.REVERSED
        ? outcome.explainedBy(faulty.evidence())
        : outcome;
  }

  /** What a solution that never came to rest says of the input. */
  static Optional<Reason> ofUnsettled(RestProgress seen, int charge) {
    FaultReading reading =
        new FaultReading(
            "the solution",
            OptionalDouble.empty(),
            seen.latestMillivolts(),
            OptionalDouble.empty(),
            OptionalDouble.of(seen.spreadMillivolts()));
    return new FaultFinder(charge, 25).find(List.of(reading)) instanceof Faulty faulty
        ? Optional.of(faulty.evidence())
        : Optional.empty();
  }
}
