package org.restpoint.adapters.modbus;

import java.time.Duration;
import java.util.Optional;
import org.restpoint.adapters.quantity.Meaning;

/**
 * How one probe is read. Refuses, with an {@link IllegalArgumentException}, a unit outside 1 to
 * 255, a number of retries below zero, a span that is not above zero and registers that are not
 * those of the meaning.
 *
 * @param unit the device's address; 0 is for all devices at once, and none answers to it
 * @param potential where its potential stands
 * @param temperature where its temperature stands
 * @param meaning what the two numbers are
 * @param every how often it is read
 * @param answerWithin how long an answer is waited for
 * @param retries how many more times it is asked where it did not answer, or not soundly
 * @param noDataAfter silence longer than this is told
 */
public record ModbusSettings(
    int unit,
    Optional<Register> potential,
    Optional<Register> temperature,
    Meaning meaning,
    Duration every,
    Duration answerWithin,
    int retries,
    Duration noDataAfter) {

  private static final int MOST_UNIT = 255;

  public ModbusSettings {
    if (unit < 1 || unit > MOST_UNIT) {
      throw new IllegalArgumentException("a unit is 1 to 255, not " + unit);
    }
    if (retries < 0) {
      throw new IllegalArgumentException("no %d retries".formatted(retries));
    }
    if (answerWithin.isZero() || answerWithin.isNegative()) {
      throw new IllegalArgumentException(
          "the patience for an answer %s is not above zero".formatted(answerWithin));
    }
    if (potential.isPresent() != meaning.potential().isPresent()
        || temperature.isPresent() != meaning.temperature().isPresent()) {
      throw new IllegalArgumentException("each number has a register, and each register a number");
    }
  }
}
