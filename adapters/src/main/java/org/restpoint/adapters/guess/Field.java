package org.restpoint.adapters.guess;

import java.util.List;
import java.util.Optional;

/**
 * A number of messages that comes under a name. Refuses, with an {@link IllegalArgumentException},
 * to be without values.
 *
 * @param key where it stands: a pointer, a name of records, a column
 * @param name what it is called there, in one or several words: {@code water_temp}, {@code tempC}
 * @param unit its unit, where that is said
 * @param values the latest of it as decimal numbers, at least one
 */
public record Field(String key, String name, Optional<String> unit, List<String> values) {

  public Field {
    values = List.copyOf(values);
    if (values.isEmpty()) {
      throw new IllegalArgumentException("a field has at least one value");
    }
  }

  /** The words of its name, in lower case or as they are. */
  List<String> words() {
    return List.of(
        name.replaceAll("(?<=[\\p{Ll}\\d])(?=\\p{Lu})", " ")
            .strip()
            .split("[\\s_.:/-]+|(?<=\\p{L})(?=\\d)"));
  }
}
