package org.restpoint.config.file;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.Simulation.Temperature;

/** Reads a simulated temperature: one that stays, or one that swings. */
final class SimulatedTemperatureReader {

  /** The keys of a temperature that swings. */
  static final List<String> KEYS = List.of("mean", "amplitude", "period");

  private static final Allowed AMPLITUDE =
      Allowed.from(Measure.TEMPERATURE_DIFFERENCE, "0 K", "50 K");
  private static final Allowed PERIOD = Allowed.from(Measure.TIME, "1 s", "366 d");
  private static final Duration USUAL_PERIOD = Duration.ofDays(1);

  /** What holds where the file says nothing. */
  static final Temperature USUAL = new Temperature(25, 0, USUAL_PERIOD);

  private SimulatedTemperatureReader() {}

  static Temperature read(Entry entry) {
    if (!entry.isMapping()) {
      return Allowed.WATER
          .number(entry)
          .map(celsius -> new Temperature(celsius, 0, USUAL_PERIOD))
          .orElse(USUAL);
    }
    Optional<Section> section = entry.section("a mapping with mean and amplitude");
    if (section.isEmpty()) {
      return USUAL;
    }
    Section keys = section.get();
    keys.only(KEYS);
    Optional<Double> mean =
        keys.need("mean", Measure.TEMPERATURE.expected()).flatMap(Allowed.WATER::number);
    Optional<Double> amplitude =
        keys.need("amplitude", Measure.TEMPERATURE_DIFFERENCE.expected())
            .flatMap(AMPLITUDE::number);
    Duration period = keys.find("period").flatMap(PERIOD::span).orElse(USUAL_PERIOD);
    return new Temperature(
        mean.orElse(USUAL.meanCelsius()), amplitude.orElse(USUAL.amplitudeKelvin()), period);
  }
}
