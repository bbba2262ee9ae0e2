package org.restpoint.acquisition.probe;

import java.util.Optional;
import org.restpoint.stability.calibration.Reason;

/**
 * Whether a temperature and a potential can be those of an electrode in a solution at all. What
 * cannot be comes from a broken wire or sensor, and no calibration or concentration may rest on it.
 */
final class Plausible {

  /**
   * No water-based solution is liquid at ordinary pressure beyond these; salt water freezes near −2
   * °C. What lies outside is a broken or unplugged sensor. Our choice, with some room.
   */
  private static final double COLDEST_CELSIUS = -10;

  private static final double HOTTEST_CELSIUS = 110;

  /**
   * Electrodes stay within a volt or two of their reference; some front ends add a bias of a few
   * volts. Our choice.
   */
  private static final double MOST_MILLIVOLTS = 5000;

  private Plausible() {}

  /** Why a temperature cannot be used, if it cannot. */
  static Optional<Reason> troubleWith(Temperature temperature) {
    if (temperature instanceof Temperature.Missing missing) {
      return Optional.of(new Reason("no-temperature", missing.why(), missing.remedy()));
    }
    double celsius = ((Temperature.Known) temperature).celsius();
    if (celsius >= COLDEST_CELSIUS && celsius <= HOTTEST_CELSIUS) {
      return Optional.empty();
    }
    return Optional.of(
        new Reason(
            "no-temperature",
            "the temperature reads %s °C, which no solution has".formatted(Words.number(celsius)),
            "Look whether the temperature sensor is plugged in and whole."));
  }

  /** Why a standard's potential cannot be used, if it cannot. */
  static Optional<Reason> troubleWith(double millivolts) {
    return Math.abs(millivolts) <= MOST_MILLIVOLTS
        ? Optional.empty()
        : Optional.of(
            new Reason(
                "out-of-range",
                "%s mV is beyond what any electrode gives".formatted(Words.number(millivolts)),
                "Look whether electrode and reference are connected and stand in the solution, and"
                    + " whether the meter sends millivolts."));
  }
}
