package org.restpoint.adapters.mqtt;

import java.util.Optional;
import org.restpoint.adapters.quantity.Meaning;

/**
 * What is looked for in a message, and where. Refuses, with an {@link IllegalArgumentException}, a
 * place for a number without a meaning, and a meaning without a place.
 *
 * @param meaning what the numbers are
 * @param potential where the potential's number stands; empty for a thermometer
 * @param temperature where the temperature's number stands; empty where there is none
 */
public record Wanted(Meaning meaning, Optional<String> potential, Optional<String> temperature) {

  public Wanted {
    if (meaning.potential().isPresent() != potential.isPresent()
        || meaning.temperature().isPresent() != temperature.isPresent()) {
      throw new IllegalArgumentException(
          "each number needs a place, and each place a number: %s, %s, %s"
              .formatted(meaning, potential, temperature));
    }
  }
}
