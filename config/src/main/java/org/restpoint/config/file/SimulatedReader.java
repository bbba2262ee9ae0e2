package org.restpoint.config.file;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.SimulatedFault;
import org.restpoint.config.station.Simulation;
import org.restpoint.config.station.Simulation.Noise;
import org.restpoint.config.station.Simulation.Resolution;
import org.restpoint.config.station.Simulation.Temperature;
import org.restpoint.config.station.Simulation.Visit;

/** Reads a link to an electrode or thermometer that is simulated. */
final class SimulatedReader {

  private static final List<String> PLACE_KEYS = List.of("solution", "visits");

  /** The keys of a simulated electrode. */
  static final List<String> ELECTRODE_KEYS =
      List.of(
          "solution",
          "visits",
          "temperature",
          "slope",
          "offset",
          "response",
          "time-constant",
          "slow-time-constant",
          "slow-share",
          "noise",
          "correlated-noise",
          "correlation",
          "creep",
          "resolution",
          "temperature-resolution",
          "interval",
          "no-data-after",
          "seed",
          "faults");

  /** The keys of a simulated thermometer. */
  static final List<String> THERMOMETER_KEYS =
      List.of("temperature", "temperature-resolution", "interval", "no-data-after", "faults");

  private static final Allowed SLOPE = Allowed.from(Measure.SHARE, "1 %", "200 %");
  private static final Allowed OFFSET = Allowed.from(Measure.POTENTIAL, "-2000 mV", "2000 mV");
  private static final Allowed NOISE = Allowed.from(Measure.POTENTIAL, "0 mV", "100 mV");
  private static final PlainNumber CORRELATION =
      new PlainNumber(0, true, 0.999, "a number from 0 to 0.999, e.g. 0.8");
  private static final Allowed CREEP = Allowed.from(Measure.DRIFT, "-100 mV/h", "100 mV/h");
  private static final Allowed RESOLUTION = Allowed.above(Measure.POTENTIAL, "0 mV", "100 mV");
  private static final Allowed TEMPERATURE_RESOLUTION =
      Allowed.above(Measure.TEMPERATURE_DIFFERENCE, "0 K", "5 K");

  private static final double USUAL_SLOPE_PERCENT = 98;
  private static final double USUAL_NOISE_MILLIVOLTS = 0.05;
  private static final double USUAL_CORRELATION = 0.8;
  private static final double USUAL_STEP_MILLIVOLTS = 0.01;
  private static final double USUAL_STEP_KELVIN = 0.1;
  private static final long MOST_SEED = 1_000_000_000_000L;

  private final Section keys;
  private final SimulatedInterval interval;

  private SimulatedReader(Section keys) {
    this.keys = keys;
    this.interval = SimulatedInterval.read(keys);
  }

  static Optional<LinkSettings> read(Section keys, boolean thermometer) {
    SimulatedReader reader = new SimulatedReader(keys);
    if (thermometer) {
      List<String> foreign = new ArrayList<>(ELECTRODE_KEYS);
      foreign.removeAll(THERMOMETER_KEYS);
      keys.only(THERMOMETER_KEYS, foreign, "a thermometer has a temperature alone: leave it out");
    }
    Optional<Simulation> simulation = thermometer ? reader.thermometer() : reader.electrode();
    Duration noDataAfter = reader.interval.noDataAfter(keys);
    List<SimulatedFault> faults =
        keys.find("faults")
            .map(list -> new SimulatedFaultsReader(reader.interval, thermometer).read(list))
            .orElseGet(List::of);
    return simulation.map(
        what -> new LinkSettings.Simulated(what, reader.interval.span(), noDataAfter, faults));
  }

  private Optional<Simulation> thermometer() {
    return Optional.of(new Simulation.Thermometer(temperature(), resolution()));
  }

  private Optional<Simulation> electrode() {
    Simulation.Response response = SimulatedResponseReader.read(keys, ELECTRODE_KEYS);
    Optional<String> place = keys.kind(PLACE_KEYS);
    List<Visit> solution =
        keys.find("solution")
            .flatMap(SimulatedVisitsReader::solution)
            .map(there -> List.of(new Visit(there, Optional.empty(), Optional.empty())))
            .orElseGet(List::of);
    List<Visit> visits =
        keys.find("visits")
            .map(list -> new SimulatedVisitsReader(interval).read(list))
            .orElseGet(List::of);
    List<Visit> stays = solution.isEmpty() ? visits : solution;
    Temperature temperature = temperature();
    double slope = keys.find("slope").flatMap(SLOPE::number).orElse(USUAL_SLOPE_PERCENT);
    double offset = keys.find("offset").flatMap(OFFSET::number).orElse(0.0);
    Noise noise = noise();
    double creep = keys.find("creep").flatMap(CREEP::number).orElse(0.0);
    long seed = keys.find("seed").flatMap(value -> value.whole(-MOST_SEED, MOST_SEED)).orElse(1L);
    Resolution resolution = resolution();
    return place
        .filter(any -> !stays.isEmpty())
        .map(
            any ->
                new Simulation.Electrode(
                    stays, temperature, slope, offset, response, noise, creep, seed, resolution));
  }

  private Temperature temperature() {
    return keys.find("temperature")
        .map(SimulatedTemperatureReader::read)
        .orElse(SimulatedTemperatureReader.USUAL);
  }

  private Noise noise() {
    double white = keys.find("noise").flatMap(NOISE::number).orElse(USUAL_NOISE_MILLIVOLTS);
    double correlated = keys.find("correlated-noise").flatMap(NOISE::number).orElse(0.0);
    double correlation =
        keys.find("correlation").flatMap(CORRELATION::read).orElse(USUAL_CORRELATION);
    if (keys.has("correlation")) {
      keys.need("correlated-noise", "how large it is, as correlation says how it goes on");
    }
    return new Noise(white, correlated, correlation);
  }

  private Resolution resolution() {
    return new Resolution(
        keys.find("resolution").flatMap(RESOLUTION::number).orElse(USUAL_STEP_MILLIVOLTS),
        keys.find("temperature-resolution")
            .flatMap(TEMPERATURE_RESOLUTION::number)
            .orElse(USUAL_STEP_KELVIN));
  }
}
