package org.restpoint.acquisition.probe;

import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.event.Result.Verification;

/** Compares a known solution that was read as if it were a sample with what it holds. */
final class Checks {

  /**
   * Customary limits for a continuing calibration check: a known solution is found to within 10 %.
   * Common practice of laboratories; methods set their own.
   */
  private static final double LOWEST_RECOVERY_PERCENT = 90;

  private static final double HIGHEST_RECOVERY_PERCENT = 110;

  /** A buffer is found to within 0.05: US EPA SW-846 method 9045 asks for it. */
  private static final double MOST_PH = 0.05;

  /** Keeps what is exactly at a limit within it, whatever the rounding of the last bits. */
  private static final double ROUNDING = 1e-9;

  private Checks() {}

  /** What was expected and found; empty where nobody knows what to expect at that temperature. */
  static Optional<Verification> of(Standard standard, double celsius, Scale scale, Amount amount) {
    return standard
        .at(celsius)
        .map(portion -> scale.of(portion.molesPerLitre()))
        .map(
            expected ->
                new Verification(
                    "check-standard",
                    standard.name(),
                    expected,
                    amount.value() - expected,
                    scale instanceof Scale.OfPh
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(100 * amount.value() / expected)));
  }

  /** Whether it is further from what was expected than is customary. */
  static boolean isOff(Verification verification) {
    if (verification.recoveryPercent().isEmpty()) {
      return Math.abs(verification.difference()) > MOST_PH + ROUNDING;
    }
    double recovery = verification.recoveryPercent().getAsDouble();
    return recovery < LOWEST_RECOVERY_PERCENT - ROUNDING
        || recovery > HIGHEST_RECOVERY_PERCENT + ROUNDING;
  }
}
