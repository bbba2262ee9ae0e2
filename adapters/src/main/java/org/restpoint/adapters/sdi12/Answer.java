package org.restpoint.adapters.sdi12;

import java.util.function.Function;

/**
 * What a sensor's answer says.
 *
 * @param <T> what is asked for
 */
sealed interface Answer<T> {

  /**
   * It says what was asked for.
   *
   * @param value what it says
   */
  record Understood<T>(T value) implements Answer<T> {}

  /**
   * It does not.
   *
   * @param reason why, a clause without a full stop
   */
  record Malformed<T>(String reason) implements Answer<T> {}

  /** The same of something else; what is malformed stays so. */
  default <U> Answer<U> then(Function<T, Answer<U>> next) {
    if (this instanceof Understood<T> understood) {
      return next.apply(understood.value());
    }
    return new Malformed<>(((Malformed<T>) this).reason());
  }
}
