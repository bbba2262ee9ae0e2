package org.restpoint.stability.thermometer;

import static org.assertj.core.api.Assertions.assertThat;

import org.hipparchus.analysis.solvers.BrentSolver;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.thermometer.ThermometerReading.Celsius;
import org.restpoint.stability.thermometer.ThermometerReading.OutOfRange;

/** What tests ask of a thermometer. */
final class Readings {

  private Readings() {}

  /** The temperature that it must tell. */
  static Celsius read(ResistanceThermometer thermometer, double ohms) {
    ThermometerReading reading = thermometer.celsius(ohms);
    assertThat(reading).as("at %s ohm", ohms).isInstanceOf(Celsius.class);
    return (Celsius) reading;
  }

  /** The reason why it must not. */
  static Reason refused(ResistanceThermometer thermometer, double ohms) {
    ThermometerReading reading = thermometer.celsius(ohms);
    assertThat(reading).as("at %s ohm", ohms).isInstanceOf(OutOfRange.class);
    return ((OutOfRange) reading).reason();
  }

  /** The temperature at which it has a resistance, found by bracketing alone. */
  static double solved(ResistanceThermometer thermometer, double ohms, double from, double to) {
    return new BrentSolver(1e-14, 1e-12)
        .solve(200, celsius -> thermometer.ohms(celsius) - ohms, from, to);
  }
}
