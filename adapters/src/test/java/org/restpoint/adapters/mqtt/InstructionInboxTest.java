package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.net.URI;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.broker.Mosquitto;

/** Instructions over a real broker that may be away, and a consumer that may fail. */
@Timeout(60)
class InstructionInboxTest {

  private static final String TOPIC = "restpoint/bench/no3-a/instruction";

  private final HeardTroubles troubles = new HeardTroubles();
  private final BlockingQueue<Instruction> taken = new LinkedBlockingQueue<>();

  @TempDir private Path folder;

  private InstructionInbox inbox(URI broker, Consumer<Instruction> consumer) {
    return new InstructionInbox(
        BrokerAddress.anonymous(broker),
        "restpoint-bench-inbox",
        List.of("restpoint/bench/+/instruction"),
        OutboxPublisherTest.quick(),
        consumer,
        troubles,
        InstantSource.system(),
        System::nanoTime);
  }

  private Instruction next() {
    try {
      @Nullable Instruction next = taken.poll(30, TimeUnit.SECONDS);
      return next == null ? fail("no instruction has come") : next;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  @Test
  void whatWasNotAcknowledgedComesAgainAndWhatWasDoesNot() {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Subscriber rig = Subscriber.connect(broker.url(), "rig")) {
      InstructionInbox first = inbox(broker.url(), taken::add);
      first.start();
      troubles.next("connected");
      rig.publish(TOPIC, "stored", 1, false);
      rig.publish(TOPIC, "not stored", 1, false);
      Instruction stored = next();
      assertThat(stored.text()).isEqualTo("stored");
      assertThat(stored.topic()).isEqualTo(TOPIC);
      assertThat(stored.retained()).isFalse();
      assertThat(next().text()).isEqualTo("not stored");
      stored.acknowledge().run();
      stored.acknowledge().run();
      first.close();
      assertThat(first.counts().acknowledged()).isEqualTo(1);

      rig.publish(TOPIC, "sent while away", 1, false);
      try (InstructionInbox second = inbox(broker.url(), taken::add)) {
        second.start();
        Instruction again = next();
        assertThat(again.text()).isEqualTo("not stored");
        assertThat(again.duplicate()).isTrue();
        assertThat(next().text()).isEqualTo("sent while away");
        assertThat(taken).isEmpty();
      }
    }
  }

  @Test
  void anInstructionThatCouldNotBeStoredIsToldAndStaysWithTheBroker() {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Subscriber rig = Subscriber.connect(broker.url(), "rig")) {
      try (InstructionInbox failing =
          inbox(
              broker.url(),
              instruction -> {
                throw new IllegalStateException("disk full");
              })) {
        failing.start();
        troubles.next("connected");
        rig.publish(TOPIC, "precious", 1, false);
        assertThat(troubles.next("instruction-not-stored").text())
            .isEqualTo(
                "a message on %s could not be taken (disk full); the broker keeps it and sends it"
                        .formatted(TOPIC)
                    + " again after the next connection");
      }
      try (InstructionInbox working = inbox(broker.url(), taken::add)) {
        working.start();
        assertThat(next().text()).isEqualTo("precious");
      }
    }
  }

  @Test
  void anInstructionSurvivesABrokerThatIsStoppedAndStartedAgain() {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Subscriber rig = Subscriber.connect(broker.url(), "rig");
        InstructionInbox inbox = inbox(broker.url(), taken::add)) {
      inbox.start();
      troubles.next("connected");
      rig.publish(TOPIC, "keep me", 1, false);
      Instruction before = next();
      broker.stop();
      troubles.next("broker-refused");
      before.acknowledge().run();
      broker.start();
      troubles.next("connected");
      Instruction after = next();
      assertThat(after.text()).isEqualTo("keep me");
      after.acknowledge().run();
      assertThat(inbox.counts().received()).isEqualTo(2);
    }
  }

  @Test
  void moreThanFitAtOnceAreFetchedAgainUntilAllHaveCome() {
    int many = 3_000;
    try (Mosquitto broker =
            Mosquitto.open(folder)
                .with("max_inflight_messages 0")
                .with("max_queued_messages 0")
                .start();
        Subscriber rig = Subscriber.connect(broker.url(), "rig")) {
      InstructionInbox subscribed = inbox(broker.url(), taken::add);
      subscribed.start();
      troubles.next("connected");
      subscribed.close();
      for (int i = 0; i < many; i++) {
        rig.publish(TOPIC, Integer.toString(i), 1, false);
      }
      Set<String> seen = new HashSet<>();
      try (InstructionInbox inbox =
          inbox(
              broker.url(),
              instruction -> {
                taken.add(instruction);
                instruction.acknowledge().run();
              })) {
        inbox.start();
        while (seen.size() < many) {
          seen.add(next().text());
        }
      }
    }
  }

  @Test
  void anInstructionLongerThanOneCanBeIsRejectedForGood() {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Subscriber rig = Subscriber.connect(broker.url(), "rig");
        InstructionInbox inbox = inbox(broker.url(), taken::add)) {
      inbox.start();
      troubles.next("connected");
      rig.publish(TOPIC, "x".repeat(65_537), 1, false);
      rig.publish(TOPIC, "short", 1, false);
      assertThat(troubles.next("instruction-too-long").text())
          .isEqualTo(
              "a message of 65537 bytes on %s was rejected: an instruction has at most 65536"
                  .formatted(TOPIC));
      assertThat(next().text()).isEqualTo("short");
      assertThat(inbox.counts().rejected()).isEqualTo(1);
    }
  }
}
