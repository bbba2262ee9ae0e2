package org.restpoint.config.station;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** What a simulated link simulates. */
public sealed interface Simulation {

  /**
   * An electrode with a thermometer beside it.
   *
   * @param visits what it stands in, one after the other, then from the first again
   * @param temperature the temperature of its solutions
   * @param slopePercent its slope, % of the ideal slope
   * @param offsetMillivolts its potential at 1 mol/L, in mV
   * @param response how it comes to rest
   * @param noise its noise
   * @param creepMillivoltsPerHour how fast its offset creeps, in mV/h
   * @param seed seed of its noise and of its faults
   * @param resolution how finely the instrument shows
   */
  record Electrode(
      List<Visit> visits,
      Temperature temperature,
      double slopePercent,
      double offsetMillivolts,
      Response response,
      Noise noise,
      double creepMillivoltsPerHour,
      long seed,
      Resolution resolution)
      implements Simulation {

    /** Copies the visits. */
    public Electrode {
      visits = List.copyOf(visits);
    }
  }

  /**
   * A thermometer alone.
   *
   * @param temperature what it measures
   * @param resolution how finely the instrument shows
   */
  record Thermometer(Temperature temperature, Resolution resolution) implements Simulation {}

  /**
   * A stay in a solution.
   *
   * @param solution a concentration, or a pH for what is measured in pH
   * @param celsius the solution's own mean temperature in °C; empty for that of all
   * @param span how long; empty for good, which only the last visit is
   */
  record Visit(Quantity solution, Optional<Double> celsius, Optional<Duration> span) {}

  /**
   * A temperature, which may swing.
   *
   * @param meanCelsius the temperature, or its mean, in °C
   * @param amplitudeKelvin by how much it swings up and down, in K; 0 for not at all
   * @param period from one warmest time to the next
   */
  record Temperature(double meanCelsius, double amplitudeKelvin, Duration period) {}

  /**
   * Noise.
   *
   * @param whiteMillivolts standard deviation of white noise, in mV
   * @param correlatedMillivolts standard deviation of noise that goes on from reading to reading
   * @param correlation how much of it goes on, 0 to below 1
   */
  record Noise(double whiteMillivolts, double correlatedMillivolts, double correlation) {}

  /**
   * How finely an instrument shows.
   *
   * @param millivolts the least difference of potentials, in mV
   * @param kelvin the least difference of temperatures, in K
   */
  record Resolution(double millivolts, double kelvin) {}

  /** How an electrode comes to rest. */
  sealed interface Response {

    /** By diffusion through a film of solution. */
    record Film(Duration timeConstant) implements Response {}

    /** By diffusion within the membrane. */
    record Membrane(Duration timeConstant) implements Response {}

    /** Along a hyperbola, half way after the time constant. */
    record Hyperbola(Duration timeConstant) implements Response {}

    /**
     * By a quick part and a slow one.
     *
     * @param slowPercent the slow part of the whole, in %
     */
    record TwoExponentials(Duration timeConstant, Duration slowTimeConstant, double slowPercent)
        implements Response {}
  }
}
