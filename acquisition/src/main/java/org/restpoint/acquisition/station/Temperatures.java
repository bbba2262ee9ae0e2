package org.restpoint.acquisition.station;

import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import org.restpoint.acquisition.probe.Temperature;
import org.restpoint.acquisition.probe.Words;
import org.restpoint.config.station.TemperatureSource;
import org.restpoint.config.station.TemperatureSource.WhenStale;
import org.restpoint.stability.reading.Reading;

/** The last temperature of each probe, for itself and for those that borrow it. */
final class Temperatures {

  /**
   * Standard uncertainty of a temperature that comes with the readings: bench and field thermistors
   * are commonly good to about 0.2 K (common practice; no source). A fixed temperature states its
   * own.
   */
  private static final double THERMOMETER_KELVIN = 0.2;

  private final Map<String, Seen> seen = new HashMap<>();

  private record Seen(Instant time, double celsius) {}

  void note(String probe, Reading reading) {
    if (reading.celsius().isPresent()) {
      seen.put(probe, new Seen(reading.time(), reading.celsius().getAsDouble()));
    }
  }

  Temperature of(TemperatureSource source, Reading reading) {
    if (source instanceof TemperatureSource.Fixed fixed) {
      return new Temperature.Known(fixed.celsius(), fixed.uncertaintyKelvin(), false);
    }
    if (source instanceof TemperatureSource.FromProbe from) {
      return borrowed(from, reading.time());
    }
    OptionalDouble celsius = reading.celsius();
    return celsius.isPresent()
        ? new Temperature.Known(celsius.getAsDouble(), THERMOMETER_KELVIN, false)
        : new Temperature.Missing(
            "the reading at rest carries no temperature",
            "Look whether the meter's temperature sensor is connected, or set temperature to a fixed"
                + " value or another probe.");
  }

  private Temperature borrowed(TemperatureSource.FromProbe from, Instant now) {
    Seen last = seen.get(from.probe());
    if (last == null) {
      return new Temperature.Missing(
          "probe %s has not given a temperature yet".formatted(from.probe()),
          "Look whether probe %s is connected.".formatted(from.probe()));
    }
    Duration age = Duration.between(last.time(), now);
    boolean stale = age.compareTo(from.staleAfter()) > 0;
    if (stale && from.whenStale() == WhenStale.REFUSE) {
      return new Temperature.Missing(
          "the temperature of probe %s is %s old; it may be %s"
              .formatted(from.probe(), Words.span(upToSeconds(age)), Words.span(from.staleAfter())),
          "Look whether probe %s is connected, or allow an older temperature with stale-after."
              .formatted(from.probe()));
    }
    return new Temperature.Known(last.celsius(), THERMOMETER_KELVIN, stale);
  }

  /** A span rounded up, so that one too long by a little does not look just long enough. */
  private static Duration upToSeconds(Duration span) {
    return Duration.ofSeconds(Math.floorDiv(span.toMillis() + 999, 1000));
  }
}
