package org.restpoint.adapters.simulated;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.restpoint.stability.reading.Reading;

/** A thermometer alone: it shows the temperature as it is, rounded. For any thread. */
final class SimulatedThermometer implements SimulatedProbe {

  private final Subject.Thermometer thermometer;
  private final Instant start;

  SimulatedThermometer(Subject.Thermometer thermometer, Instant start) {
    this.thermometer = thermometer;
    this.start = start;
  }

  @Override
  public Reading reading(Instant time, List<Fault.OfElectrode> faults) {
    double celsius =
        thermometer.swing().celsius(thermometer.celsius(), Duration.between(start, time));
    return new Reading(
        time, OptionalDouble.empty(), OptionalDouble.of(thermometer.display().celsius(celsius)));
  }

  @Override
  public Reading extraReading(Instant time, List<Fault.OfElectrode> faults) {
    return reading(time, faults);
  }
}
