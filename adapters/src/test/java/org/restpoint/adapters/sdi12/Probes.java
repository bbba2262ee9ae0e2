package org.restpoint.adapters.sdi12;

import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.restpoint.adapters.bus.Outcome;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.Parsed;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;
import org.restpoint.adapters.sdi12.Measurement.Kind;

/** The probes of one bus, for tests. */
final class Probes {

  private static final Duration SECOND = Duration.ofSeconds(1);

  private final Map<Character, Sensor> sensors = new HashMap<>();

  /** A probe with a potential and a temperature at these places of a command; 0 for none. */
  SensorExchange probe(char address, String command, int millivolts, int celsius) {
    Kind kind =
        switch (command.charAt(0)) {
          case 'M' -> Kind.ALONE;
          case 'C' -> Kind.CONCURRENT;
          default -> Kind.CONTINUOUS;
        };
    char last = command.charAt(command.length() - 1);
    Measurement measurement =
        new Measurement(kind, Character.isDigit(last) ? last - '0' : 0, command.startsWith("C", 1));
    Sensor sensor = sensors.computeIfAbsent(address, any -> new Sensor(new SensorAddress(address)));
    return new SensorExchange(sensor, settings(address, measurement, millivolts, celsius));
  }

  static Sdi12Settings settings(
      char address, Measurement measurement, int millivolts, int celsius) {
    return new Sdi12Settings(
        new SensorAddress(address),
        measurement,
        new Meaning(
            millivolts == 0 ? Optional.empty() : Optional.of(PotentialScale.MILLIVOLTS),
            celsius == 0 ? Optional.empty() : Optional.of(TemperatureScale.CELSIUS)),
        millivolts == 0 ? OptionalInt.empty() : OptionalInt.of(millivolts),
        celsius == 0 ? OptionalInt.empty() : OptionalInt.of(celsius),
        SECOND,
        SECOND,
        2,
        SECOND);
  }

  static Outcome read(double millivolts, double celsius) {
    return new Outcome.Values(
        new Parsed.Values(OptionalDouble.of(millivolts), OptionalDouble.of(celsius)));
  }
}
