package org.restpoint.adapters.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.reading.Reading;

class DeliveryTest {

  private static final Reading READING = Reading.ofMillivolts(Instant.EPOCH, 1);

  private final CollectingListener listener = new CollectingListener();
  private final AtomicLong nanos = new AtomicLong(Long.MAX_VALUE);
  private final Delivery delivery = new Delivery("topic bench/no3-a", listener, nanos::get);

  @Test
  void everyArrivalIsCountedAsOneThing() {
    delivery.reading(READING);
    delivery.reading(READING);
    delivery.rejected();
    listener.full(true);
    delivery.reading(READING);
    delivery.dropped();
    assertThat(delivery.counts()).isEqualTo(new LinkCounts(5, 2, 1, 2));
    assertThat(listener.readings()).containsExactly(READING, READING);
  }

  @Test
  void aFullHandOverIsToldAtOnceAndThenOnceAMinuteWithACount() {
    listener.full(true);
    for (int i = 0; i < 4; i++) {
      delivery.reading(READING);
    }
    assertThat(listener.nextTrouble())
        .isEqualTo(
            new LinkTrouble(
                "hand-over-full",
                "a reading of topic bench/no3-a was dropped: the hand-over is full",
                "Look in the log for what holds the service up, or let the device send less"
                    + " often"));
    nanos.addAndGet(Duration.ofMinutes(1).toNanos() - 1);
    delivery.due();
    assertThat(listener.troubles()).isEmpty();
    nanos.incrementAndGet();
    delivery.due();
    assertThat(listener.nextTrouble().text())
        .isEqualTo("3 more readings of topic bench/no3-a were dropped: the hand-over is full");
  }

  @Test
  void whatIsLostOnTheWayIsToldWhenItIsDue() {
    delivery.dropped();
    assertThat(listener.troubles()).isEmpty();
    delivery.due();
    assertThat(listener.nextTrouble().code()).isEqualTo("hand-over-full");
  }
}
