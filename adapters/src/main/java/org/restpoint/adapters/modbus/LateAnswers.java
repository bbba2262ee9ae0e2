package org.restpoint.adapters.modbus;

import java.util.HashMap;
import java.util.Map;

/**
 * Keeps the late answer to one question from being taken for the answer to another. A frame on a
 * serial line does not say which question it answers: only its unit, function and length are known,
 * and of an exception not even the length. So when a unit has not answered in time, another
 * question to it with the same function is put off until as much time again has passed, and what
 * comes meanwhile is passed over. The same question may be asked again at once: its late answer is
 * an answer.
 */
final class LateAnswers {

  /** A question that is owed an answer. */
  private record Owed(int unit, ReadRequest request) {

    boolean mayBeTakenFor(int otherUnit, ReadRequest other) {
      return unit == otherUnit && request.table() == other.table() && !request.equals(other);
    }
  }

  /** Until when the answer may still come. */
  private final Map<Owed, Long> untilNanos = new HashMap<>();

  /**
   * An ask had no answer in time.
   *
   * @param patienceNanos how long it was waited for
   */
  void missed(int unit, ReadRequest request, long nowNanos, long patienceNanos) {
    untilNanos.put(new Owed(unit, request), nowNanos + patienceNanos);
  }

  /**
   * An ask was answered; perhaps by what an earlier one was owed, whose own answer then follows.
   */
  void answered(int unit, ReadRequest request, long nowNanos, long patienceNanos) {
    untilNanos.computeIfPresent(
        new Owed(unit, request),
        (owed, until) -> until - nowNanos > 0 ? nowNanos + patienceNanos : until);
  }

  /** How long an ask is to be put off, in nanoseconds; 0 for not at all. */
  long putOffNanos(int unit, ReadRequest request, long nowNanos) {
    untilNanos.values().removeIf(until -> until - nowNanos <= 0);
    return untilNanos.entrySet().stream()
        .filter(entry -> entry.getKey().mayBeTakenFor(unit, request))
        .mapToLong(entry -> entry.getValue() - nowNanos)
        .max()
        .orElse(0);
  }
}
