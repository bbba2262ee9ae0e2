package org.restpoint.acquisition.listen;

import java.util.ArrayList;
import java.util.List;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;
import org.restpoint.stability.thermometer.Beta;
import org.restpoint.stability.thermometer.Platinum;
import org.restpoint.stability.thermometer.ResistanceThermometer;

/** What a station file says beside counts and ohms, of which a device cannot say what they mean. */
final class NumberKeys {

  private NumberKeys() {}

  /** The keys, one a line; none where all numbers are in units. */
  static List<String> of(Meaning meaning) {
    List<String> keys = new ArrayList<>();
    meaning
        .potential()
        .filter(scale -> scale.name().equals("counts"))
        .ifPresent(scale -> counts(scale, keys));
    if (meaning.temperature().orElse(TemperatureScale.CELSIUS)
        instanceof TemperatureScale.Ohms ohms) {
      keys.add(
          "thermometer: %s    # SUPPOSED by its resistance: the data sheet knows which it is"
              .formatted(thermometer(ohms.thermometer())));
    }
    return keys;
  }

  private static void counts(PotentialScale scale, List<String> keys) {
    keys.add(
        "scale: %s mV    # SUPPOSED, a converter over -2048 to 2048 mV: take it from the manual"
            .formatted(Yaml.number(scale.millivoltsPerUnit())));
    if (scale.offsetMillivolts() != 0) {
      keys.add(
          "offset: %s mV    # SUPPOSED as well".formatted(Yaml.number(scale.offsetMillivolts())));
    }
  }

  private static String thermometer(ResistanceThermometer thermometer) {
    if (thermometer instanceof Platinum platinum) {
      return "pt" + Yaml.number(platinum.ohmsAtZero());
    }
    if (thermometer instanceof Beta beta) {
      return "{ beta: %s K, resistance: %s Ohm, at: %s Cel }"
          .formatted(
              Yaml.number(beta.beta()),
              Yaml.number(beta.ohmsAtReference()),
              Yaml.number(beta.referenceCelsius()));
    }
    throw new IllegalArgumentException("no station file is written for " + thermometer);
  }
}
