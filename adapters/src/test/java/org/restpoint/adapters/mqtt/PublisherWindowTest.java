package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.InstantSource;
import java.util.Collection;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.restpoint.adapters.outbox.Outbox;
import org.restpoint.adapters.outbox.OutboxMessage;

/** What the publisher sends to a peer that acknowledges nothing, and does with a bad outbox. */
@Timeout(60)
class PublisherWindowTest {

  private static final ConnectionTimes QUICK =
      new ConnectionTimes(
          Duration.ofSeconds(1),
          Duration.ofMillis(500),
          Duration.ofSeconds(5),
          Duration.ofMillis(20),
          Duration.ofMillis(200));

  private final HeardTroubles troubles = new HeardTroubles();

  private OutboxPublisher publisher(DeafBroker broker, Outbox outbox, int window) {
    return new OutboxPublisher(
        BrokerAddress.anonymous(broker.url()),
        new PublisherSettings("bench", Presence.of("online"), window, 16, QUICK),
        outbox,
        troubles,
        InstantSource.system(),
        System::nanoTime);
  }

  private static MemoryOutbox filled(int messages) {
    MemoryOutbox outbox = new MemoryOutbox();
    IntStream.rangeClosed(1, messages)
        .forEach(i -> outbox.commit("result", false, Integer.toString(i)));
    return outbox;
  }

  @Test
  void theWindowIsNeverExceededAndANewConnectionBeginsAtTheOldest() {
    MemoryOutbox outbox = filled(1_000);
    List<String> expected =
        Stream.concat(Stream.of("true"), IntStream.rangeClosed(1, 64).mapToObj(Integer::toString))
            .toList();
    try (DeafBroker broker = new DeafBroker();
        OutboxPublisher publisher = publisher(broker, outbox, 64)) {
      publisher.start();
      assertThat(broker.nextConnection()).isEqualTo(expected);
      assertThat(broker.nextConnection()).isEqualTo(expected);
      assertThat(troubles.next("broker-frozen").remedy()).contains("sends again");
    }
  }

  @Test
  void noRowIsRemovedWithoutAnAcknowledgement() {
    MemoryOutbox outbox = filled(3);
    try (DeafBroker broker = new DeafBroker();
        OutboxPublisher publisher = publisher(broker, outbox, 64)) {
      publisher.start();
      assertThat(broker.nextConnection()).containsExactly("true", "1", "2", "3");
      troubles.next("broker-frozen");
      assertThat(outbox.waiting()).isEqualTo(3);
      PublisherCounts counts = publisher.counts();
      assertThat(counts.acknowledged()).isZero();
      assertThat(counts.unanswered()).isPositive();
    }
  }

  @Test
  void closingIsBoundedWhileTheBrokerOwesEverything() {
    MemoryOutbox outbox = filled(3);
    try (DeafBroker broker = new DeafBroker()) {
      OutboxPublisher publisher = publisher(broker, outbox, 2);
      publisher.start();
      troubles.next("connected");
      publisher.close();
      assertThat(publisher.check()).isEqualTo(new BrokerHealth.Closed());
      assertThat(broker.nextConnection()).startsWith("true").endsWith("false");
      assertThat(outbox.waiting()).isEqualTo(3);
    }
  }

  @Test
  void anOutboxThatCannotBeReadIsToldAndTriedAgain() {
    Outbox broken =
        new Outbox() {
          @Override
          public List<OutboxMessage> unsent(long after, int limit) {
            throw new IllegalStateException("disk I/O error");
          }

          @Override
          public void remove(Collection<Long> sequences) {
            throw new IllegalStateException("disk I/O error");
          }

          @Override
          public long waiting() {
            return 1;
          }
        };
    try (DeafBroker broker = new DeafBroker();
        OutboxPublisher publisher = publisher(broker, broken, 64)) {
      publisher.start();
      assertThat(troubles.next("outbox-failed").text())
          .isEqualTo("the outbox cannot be read or written (disk I/O error)");
      assertThat(broker.nextConnection()).containsExactly("true");
      assertThat(broker.nextConnection()).containsExactly("true");
    }
  }

  @Test
  void transientMessagesThatFindTheQueueFullAreDropped() {
    try (DeafBroker broker = new DeafBroker();
        OutboxPublisher publisher = publisher(broker, new MemoryOutbox(), 64)) {
      assertThat(publisher.publishTransient("progress", "early")).isFalse();
      assertThat(publisher.counts().transientDropped()).isEqualTo(1);
    }
  }
}
