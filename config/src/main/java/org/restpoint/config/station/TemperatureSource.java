package org.restpoint.config.station;

import java.time.Duration;

/** Where a solution's temperature comes from. */
public sealed interface TemperatureSource {

  /** Each reading carries it. */
  record FromReading() implements TemperatureSource {}

  /**
   * The same all the time.
   *
   * @param celsius the temperature in °C
   * @param uncertaintyKelvin its standard uncertainty in K
   */
  record Fixed(double celsius, double uncertaintyKelvin) implements TemperatureSource {

    /** Checks that both are finite and the uncertainty is no less than zero. */
    public Fixed {
      if (!Double.isFinite(celsius)
          || !Double.isFinite(uncertaintyKelvin)
          || uncertaintyKelvin < 0) {
        throw new IllegalArgumentException(
            "no temperature: " + celsius + " Cel, uncertain by " + uncertaintyKelvin + " K");
      }
    }
  }

  /**
   * Another probe's last temperature.
   *
   * @param probe the other probe's name
   * @param staleAfter how old it may be
   * @param whenStale what to do when it is older
   */
  record FromProbe(String probe, Duration staleAfter, WhenStale whenStale)
      implements TemperatureSource {}

  /** What to do with a temperature that is too old. */
  enum WhenStale {
    /** No number: the result is refused. */
    REFUSE,
    /** A number with the last temperature, flagged. */
    FLAG
  }
}
