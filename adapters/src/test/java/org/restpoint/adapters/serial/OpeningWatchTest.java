package org.restpoint.adapters.serial;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class OpeningWatchTest {

  private static final PortFailure ABSENT = new PortFailure.Absent();
  private static final PortFailure BUSY = new PortFailure.Busy(false);

  private final OpeningWatch watch = new OpeningWatch();

  @Test
  void theFirstFailureIsToldAtOnceAndOnlyOnce() {
    assertThat(watch.refused(ABSENT)).contains(ABSENT);
    assertThat(watch.refused(ABSENT)).isEmpty();
    assertThat(watch.opened()).isTrue();
    assertThat(watch.opened()).isFalse();
  }

  @Test
  void anotherFailureIsToldWhenTwoAttemptsAgree() {
    watch.refused(ABSENT);
    assertThat(watch.refused(BUSY)).isEmpty();
    assertThat(watch.refused(BUSY)).contains(BUSY);
    assertThat(watch.refused(BUSY)).isEmpty();
  }

  @Test
  void aFailureThatPassesAtOnceIsNotTold() {
    watch.refused(ABSENT);
    assertThat(watch.refused(BUSY)).isEmpty();
    assertThat(watch.refused(ABSENT)).isEmpty();
    assertThat(watch.refused(BUSY)).isEmpty();
  }

  @Test
  void afterALossAbsenceIsNothingNew() {
    assertThat(watch.opened()).isFalse();
    watch.lost();
    assertThat(watch.refused(ABSENT)).isEmpty();
    assertThat(watch.opened()).isTrue();
  }
}
