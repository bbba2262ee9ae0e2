package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.time.Duration;
import java.time.InstantSource;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.restpoint.adapters.broker.EmbeddedBroker;
import org.restpoint.adapters.broker.EmbeddedBrokerException;
import org.restpoint.adapters.link.CollectingListener;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.mqtt.Subscriber.Heard;

/** The broker inside the service does what the service asks of a broker. */
@Timeout(60)
class EmbeddedBrokerConversationTest {

  private final EmbeddedBroker broker = new EmbeddedBroker(0);
  private final HeardTroubles troubles = new HeardTroubles();
  private int port;

  @BeforeEach
  void start() throws EmbeddedBrokerException {
    port = broker.start();
  }

  @AfterEach
  void end() {
    broker.close();
  }

  private URI url() {
    return URI.create("tcp://127.0.0.1:" + port);
  }

  @Test
  void messagesOfQualityOneReachAWildcard() {
    try (Subscriber ear = Subscriber.connect(url(), "ear").subscribe("restpoint/+/no3-a/#", 1);
        Subscriber mouth = Subscriber.connect(url(), "mouth")) {
      mouth.publish("restpoint/bench/other/result", "0", 1, false);
      mouth.publish("restpoint/bench/no3-a/result", "1", 1, false);
      assertThat(ear.next()).isEqualTo(new Heard("restpoint/bench/no3-a/result", "1", false));
    }
  }

  @Test
  void clientsWithoutANameAreGivenOneEach() {
    try (Subscriber ear = Subscriber.connect(url(), "").subscribe("bench/#", 1);
        Subscriber mouth = Subscriber.connect(url(), "")) {
      mouth.publish("bench/no3-a", "187.4", 1, false);
      assertThat(ear.next()).isEqualTo(new Heard("bench/no3-a", "187.4", false));
      ear.publish("bench/no3-b", "188.5", 1, false);
      assertThat(ear.next()).isEqualTo(new Heard("bench/no3-b", "188.5", false));
    }
  }

  @Test
  void retainedMessagesAreKeptAndMarkedForASubscriptionOfQualityZero() {
    try (Subscriber mouth = Subscriber.connect(url(), "mouth")) {
      mouth.publish("state", "kept", 1, true);
      try (Subscriber later = Subscriber.connect(url(), "later").subscribe("#", 0)) {
        assertThat(later.next()).isEqualTo(new Heard("state", "kept", true));
      }
      try (Subscriber latest = Subscriber.connect(url(), "latest").subscribe("#", 1)) {
        assertThat(latest.next().payload()).isEqualTo("kept");
      }
    }
  }

  @Test
  void theOutboxIsEmptiedAndTheWillIsSpoken() {
    MemoryOutbox outbox = new MemoryOutbox();
    for (int i = 0; i < 2_000; i++) {
      outbox.commit("result", false, Integer.toString(i));
    }
    String long20k = "y".repeat(20_000);
    outbox.commit("result", false, long20k);
    try (Subscriber ear =
            Subscriber.connect(url(), "ear").subscribe("result", 1).subscribe("online", 1);
        CuttableWire wire = new CuttableWire(port);
        OutboxPublisher publisher =
            new OutboxPublisher(
                BrokerAddress.anonymous(wire.url()),
                PublisherSettings.usual("bench", Presence.of("online")),
                outbox,
                troubles,
                InstantSource.system(),
                System::nanoTime)) {
      publisher.start();
      assertThat(ear.next().payload()).isEqualTo("true");
      for (int i = 0; i < 2_000; i++) {
        assertThat(ear.next().payload()).isEqualTo(Integer.toString(i));
      }
      assertThat(ear.next().payload()).isEqualTo(long20k);
      assertThat(outbox.awaitEmpty()).isTrue();
      wire.cut();
      assertThat(ear.next(heard -> heard.topic().equals("online")).payload()).isEqualTo("false");
    }
  }

  @Test
  void anInstructionSentWhileTheInboxIsAwayIsKept() {
    BlockingQueue<Instruction> taken = new LinkedBlockingQueue<>();
    InstructionInbox first = inbox(taken);
    first.start();
    troubles.next("connected");
    first.close();
    try (Subscriber rig = Subscriber.connect(url(), "rig")) {
      rig.publish("no3-a/instruction", "measure", 1, false);
      try (InstructionInbox second = inbox(taken)) {
        second.start();
        rig.publish("no3-a/instruction", "cancel", 1, false);
        assertThat(List.of(take(taken), take(taken))).containsExactly("measure", "cancel");
      }
    }
  }

  @Test
  void readingsComeInAndARetainedOneIsRejected() {
    CollectingListener heard = new CollectingListener();
    MqttReadingFormat format = Formats.json(Formats.millivolts("/mv"));
    try (Subscriber device = Subscriber.connect(url(), "device");
        MqttReadings readings =
            new MqttReadings(
                BrokerAddress.anonymous(url()),
                "readings",
                ConnectionTimes.usual(),
                InstantSource.system(),
                System::nanoTime);
        MqttLink link =
            readings.link(
                MqttLinkSettings.of("bench/no3-a", format, Duration.ofMinutes(1)), heard)) {
      device.publish("bench/no3-a", "{\"mv\": 99}", 1, true);
      link.start();
      while (link.check().condition() != Condition.READING) {
        Thread.onSpinWait();
      }
      device.publish("bench/no3-a", "{\"mv\": 187.25}", 0, false);
      assertThat(heard.nextReading().millivolts()).hasValue(187.25);
      assertThat(heard.nextTrouble().code()).isEqualTo("message-rejected");
    }
  }

  private InstructionInbox inbox(BlockingQueue<Instruction> taken) {
    return new InstructionInbox(
        BrokerAddress.anonymous(url()),
        "inbox",
        List.of("+/instruction"),
        ConnectionTimes.usual(),
        instruction -> {
          taken.add(instruction);
          instruction.acknowledge().run();
        },
        troubles,
        InstantSource.system(),
        System::nanoTime);
  }

  private static String take(BlockingQueue<Instruction> taken) {
    try {
      return taken.take().text();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}
