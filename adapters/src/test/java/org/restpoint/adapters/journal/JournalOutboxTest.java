package org.restpoint.adapters.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.restpoint.adapters.journal.Batches.message;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.outbox.Outbox;
import org.restpoint.adapters.outbox.OutboxMessage;

class JournalOutboxTest {

  @TempDir private Path folder;

  private JournalSettings settings() {
    return new JournalSettings(folder.resolve("bench.db"), folder.resolve("native"));
  }

  @Test
  void messagesWaitInTheOrderTheyWereCommittedAlsoOnOneRetainedTopic() {
    try (Journal journal = new Journal(settings())) {
      journal.start();
      journal.commit(
          Batches.of(
              new OutgoingMessage("state", true, "1"),
              message("result", "2"),
              new OutgoingMessage("state", true, "3")));
      journal.commit(Batches.of(message("result", "4")));

      Outbox outbox = journal;
      assertThat(outbox.unsent(0, 10))
          .extracting(OutboxMessage::payload)
          .containsExactly("1", "2", "3", "4");
      assertThat(outbox.unsent(0, 2)).extracting(OutboxMessage::payload).containsExactly("1", "2");
      long second = outbox.unsent(0, 2).get(1).sequence();
      assertThat(outbox.unsent(second, 10))
          .extracting(OutboxMessage::payload)
          .containsExactly("3", "4");
      assertThat(outbox.waiting()).isEqualTo(4);
    }
  }

  @Test
  void aRemovedMessageIsGoneAndAnUnknownNumberIsPassedOver() {
    try (Journal journal = new Journal(settings())) {
      journal.start();
      journal.commit(Batches.of(message("a", "1"), message("a", "2"), message("a", "3")));
      List<OutboxMessage> waiting = journal.unsent(0, 10);
      journal.remove(List.of(waiting.get(0).sequence(), waiting.get(2).sequence(), 9_999L));
      journal.remove(List.of(waiting.get(0).sequence()));
      journal.remove(List.of());
      assertThat(journal.unsent(0, 10)).containsExactly(waiting.get(1));
      assertThat(journal.waiting()).isEqualTo(1);
    }
  }

  @Test
  void aSequenceNumberIsNeverUsedTwiceEvenWhenTheOutboxRanEmptyBetween() {
    long first;
    try (Journal journal = new Journal(settings())) {
      journal.start();
      journal.commit(Batches.of(message("a", "1")));
      first = journal.unsent(0, 1).get(0).sequence();
      journal.remove(List.of(first));
    }
    try (Journal journal = new Journal(settings())) {
      journal.start();
      journal.commit(Batches.of(message("a", "2")));
      assertThat(journal.unsent(first, 10)).extracting(OutboxMessage::payload).containsExactly("2");
    }
  }

  @Test
  void writersAndTheSenderMayComeFromSeveralThreads() throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(3);
    try (Journal journal = new Journal(settings())) {
      journal.start();
      CountDownLatch together = new CountDownLatch(3);
      Future<?> one = threads.submit(() -> write(journal, together, "a"));
      Future<?> two = threads.submit(() -> write(journal, together, "b"));
      Future<Integer> sender = threads.submit(() -> send(journal, together));
      one.get();
      two.get();
      int sent = sender.get();
      List<OutboxMessage> left = journal.unsent(0, 1_000);
      assertThat(journal.waiting()).isEqualTo(left.size());
      assertThat(sent + left.size()).isEqualTo(200);
    } finally {
      threads.shutdownNow();
    }
  }

  private static void write(Journal journal, CountDownLatch together, String topic) {
    together.countDown();
    for (int i = 0; i < 100; i++) {
      journal.commit(Batches.of(message(topic, Integer.toString(i))));
    }
  }

  private static int send(Journal journal, CountDownLatch together) throws InterruptedException {
    together.countDown();
    together.await();
    int sent = 0;
    for (int i = 0; i < 50; i++) {
      List<Long> some = journal.unsent(0, 5).stream().map(OutboxMessage::sequence).toList();
      journal.remove(some);
      sent += some.size();
    }
    return sent;
  }
}
