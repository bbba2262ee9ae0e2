package org.restpoint.adapters.guess;

import java.util.Optional;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;
import org.restpoint.stability.thermometer.Beta;
import org.restpoint.stability.thermometer.Platinum;
import org.restpoint.stability.thermometer.ResistanceThermometer;

/**
 * What numbers of a unit mean. For counts and ohms the lines cannot say it: a converter of 16 or 24
 * bits over ±2048 mV is supposed, and the thermometer that is nearest at room temperature.
 */
final class Scales {

  /** The input that is supposed of a converter, in mV either way. */
  private static final double FULL_SCALE_MILLIVOLTS = 2_048;

  private static final double HALF_OF_16_BITS = 1 << 15;
  private static final double HALF_OF_24_BITS = 1 << 23;

  /** Thermistors in use, Ω at 25 °C; which ones is common practice. */
  private static final double[] THERMISTORS = {
    2_252, 3_000, 5_000, 10_000, 20_000, 50_000, 100_000
  };

  /** A thermistor changes by less than this factor between 10 and 45 °C. */
  private static final double FACTOR = 2.3;

  private static final double USUAL_BETA = 3_435;

  private Scales() {}

  /** How counts may become a potential: the whole range of the converter on ±2048 mV. */
  static PotentialScale potential(String group, Column column) {
    return switch (group) {
      case "volts" -> PotentialScale.VOLTS;
      case "microvolts" -> PotentialScale.MICROVOLTS;
      case "counts" -> counts(column);
      default -> PotentialScale.MILLIVOLTS;
    };
  }

  private static PotentialScale counts(Column column) {
    double largest = Math.max(Math.abs(column.least()), Math.abs(column.most()));
    double half = largest < 2 * HALF_OF_16_BITS ? HALF_OF_16_BITS : HALF_OF_24_BITS;
    boolean unsigned = column.least() >= 0 && largest >= half;
    return PotentialScale.counts(
        FULL_SCALE_MILLIVOLTS / half, unsigned ? -FULL_SCALE_MILLIVOLTS : 0);
  }

  /** How a number becomes a temperature; empty for ohms that no usual thermometer has. */
  static Optional<TemperatureScale> temperature(String group, Column column) {
    return switch (group) {
      case "kelvin" -> Optional.of(TemperatureScale.KELVIN);
      case "fahrenheit" -> Optional.of(TemperatureScale.FAHRENHEIT);
      case "ohms" -> thermometer(column).map(TemperatureScale.Ohms::new);
      default -> Optional.of(TemperatureScale.CELSIUS);
    };
  }

  private static Optional<ResistanceThermometer> thermometer(Column column) {
    for (double ohmsAtZero : new double[] {100, 500, 1_000}) {
      if (column.isWithin(0.95 * ohmsAtZero, 1.2 * ohmsAtZero)) {
        return Optional.of(new Platinum(ohmsAtZero));
      }
    }
    double nearest = THERMISTORS[0];
    for (double ohms : THERMISTORS) {
      if (distance(column, ohms) < distance(column, nearest)) {
        nearest = ohms;
      }
    }
    return distance(column, nearest) < Math.log(FACTOR)
        ? Optional.of(new Beta(nearest, 25, USUAL_BETA))
        : Optional.empty();
  }

  private static double distance(Column column, double ohms) {
    return Math.max(
        Math.abs(Math.log(column.least() / ohms)), Math.abs(Math.log(column.most() / ohms)));
  }
}
