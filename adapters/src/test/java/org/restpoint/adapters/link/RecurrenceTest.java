package org.restpoint.adapters.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class RecurrenceTest {

  private static final long SPAN = Duration.ofMinutes(1).toNanos();

  /** A monotonic clock may begin anywhere, also below zero and near its turn. */
  private static final long START = Long.MAX_VALUE - SPAN / 2;

  private final Recurrence recurrence = new Recurrence(Duration.ofMinutes(1));

  @Test
  void theFirstIsToldAtOnceAndLaterOnesTogether() {
    assertThat(recurrence.happened(START)).isEqualTo(1);
    assertThat(recurrence.happened(START + 1)).isZero();
    assertThat(recurrence.happened(START + SPAN - 1)).isZero();
    assertThat(recurrence.happened(START + SPAN)).isEqualTo(3);
    assertThat(recurrence.happened(START + SPAN + 1)).isZero();
  }

  @Test
  void whatIsHeldBackFallsDue() {
    recurrence.happened(START);
    recurrence.happened(START + 1);
    assertThat(recurrence.due(START + SPAN - 1)).isZero();
    assertThat(recurrence.due(START + SPAN)).isEqualTo(1);
    assertThat(recurrence.due(START + 9 * SPAN)).isZero();
  }

  @Test
  void nothingIsDueBeforeAnythingHappened() {
    assertThat(recurrence.due(START)).isZero();
  }
}
