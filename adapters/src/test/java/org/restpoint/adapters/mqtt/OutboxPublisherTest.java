package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.broker.Mosquitto;
import org.restpoint.adapters.mqtt.Subscriber.Heard;
import org.restpoint.adapters.outbox.OutboxMessage;

/** The publisher and a real broker that is killed, frozen, absent or unwilling. */
@Timeout(60)
class OutboxPublisherTest {

  private static final String ONLINE = "restpoint/bench/online";
  private static final String RESULT = "restpoint/bench/no3-a/result";
  private static final int MANY = 5_000;

  private final MemoryOutbox outbox = new MemoryOutbox();
  private final HeardTroubles troubles = new HeardTroubles();

  @TempDir private Path folder;

  static ConnectionTimes quick() {
    return new ConnectionTimes(
        Duration.ofSeconds(1),
        Duration.ofSeconds(1),
        Duration.ofSeconds(5),
        Duration.ofMillis(20),
        Duration.ofMillis(200));
  }

  private OutboxPublisher publisher(URI broker) {
    return publisher(BrokerAddress.anonymous(broker));
  }

  private OutboxPublisher publisher(BrokerAddress broker) {
    return new OutboxPublisher(
        broker,
        new PublisherSettings("restpoint-bench", Presence.of(ONLINE), 64, 16, quick()),
        outbox,
        troubles,
        InstantSource.system(),
        System::nanoTime);
  }

  private void commit(int from, int to) {
    for (int i = from; i <= to; i++) {
      outbox.commit(RESULT, false, Integer.toString(i));
    }
  }

  /** What was heard first, in its order, until the last has been heard. */
  private static List<String> firstHeard(Subscriber ear, Set<String> heard) {
    String last = Integer.toString(MANY);
    while (!heard.contains(last)) {
      heard.add(ear.next(message -> message.topic().equals(RESULT)).payload());
    }
    return List.copyOf(heard);
  }

  private static List<String> all() {
    return IntStream.rangeClosed(1, MANY).mapToObj(Integer::toString).toList();
  }

  /** A subscriber whose session outlives a kill, and that owes the broker no acknowledgements. */
  private static Subscriber lastingEar(Mosquitto broker) {
    Subscriber ear = Subscriber.lasting(broker.url(), "ear").subscribe("restpoint/#", 0);
    broker.save();
    return ear;
  }

  /** Commits half of all, and begins to send: the first thousand that were heard. */
  private Set<String> startedAndHeard(OutboxPublisher publisher, Subscriber ear) {
    commit(1, MANY / 2);
    publisher.start();
    Set<String> heard = new LinkedHashSet<>();
    while (heard.size() < 1_000) {
      heard.add(ear.next(message -> message.topic().equals(RESULT)).payload());
    }
    return heard;
  }

  /**
   * What the broker had acknowledged when it was killed was the broker's to deliver; all the rest
   * is the publisher's.
   */
  @Test
  void nothingIsLostAndTheOrderIsKeptWhenTheBrokerIsKilledInTheMiddle() {
    try (Mosquitto broker = Mosquitto.open(folder).with("queue_qos0_messages true").start();
        Subscriber ear = lastingEar(broker);
        OutboxPublisher publisher = publisher(broker.url())) {
      Set<String> heard = startedAndHeard(publisher, ear);
      broker.kill();
      commit(MANY / 2 + 1, MANY);
      publisher.wake();
      troubles.next("broker-refused");
      List<String> owed = outbox.unsent(0, MANY).stream().map(OutboxMessage::payload).toList();
      broker.start();

      assertThat(firstHeard(ear, heard))
          .containsAll(owed)
          .isSortedAccordingTo(Comparator.comparingInt(Integer::parseInt));
      assertThat(outbox.awaitEmpty()).isTrue();
      assertThat(publisher.counts().acknowledged()).isEqualTo(MANY);
    }
  }

  @Test
  void nothingIsLostAndTheOrderIsKeptWhenTheBrokerIsFrozenForAWhile() {
    try (Mosquitto broker = Mosquitto.open(folder).with("queue_qos0_messages true").start();
        Subscriber ear = lastingEar(broker);
        OutboxPublisher publisher = publisher(broker.url())) {
      Set<String> heard = startedAndHeard(publisher, ear);
      broker.freeze();
      commit(MANY / 2 + 1, MANY);
      publisher.wake();
      assertThat(troubles.next("broker-frozen").text())
          .isEqualTo("broker %s has acknowledged nothing for 1 s".formatted(broker.url()));
      assertThat(troubles.next("broker-timeout").text())
          .isEqualTo("broker %s gave no answer within 1 s".formatted(broker.url()));
      broker.thaw();

      assertThat(firstHeard(ear, heard)).containsExactlyElementsOf(all());
      assertThat(outbox.awaitEmpty()).isTrue();
    }
  }

  @Test
  void theServiceIsSeenToComeAndToGo() {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Subscriber ear = Subscriber.connect(broker.url(), "ear").subscribe(ONLINE, 1)) {
      OutboxPublisher publisher = publisher(broker.url());
      publisher.start();
      assertThat(ear.next().payload()).isEqualTo("true");
      publisher.close();
      assertThat(ear.next().payload()).isEqualTo("false");
      assertThat(publisher.check()).isInstanceOf(BrokerHealth.Closed.class);
      try (Subscriber later = Subscriber.connect(broker.url(), "later").subscribe(ONLINE, 1)) {
        assertThat(later.next()).isEqualTo(new Heard(ONLINE, "false", true));
      }
    }
  }

  @Test
  void theWillSaysThatTheServiceIsGoneWhenItsSocketDies() {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Subscriber ear = Subscriber.connect(broker.url(), "ear").subscribe(ONLINE, 1);
        CuttableWire wire = new CuttableWire(broker.port());
        OutboxPublisher publisher = publisher(wire.url())) {
      publisher.start();
      assertThat(ear.next().payload()).isEqualTo("true");
      wire.cut();
      assertThat(ear.next().payload()).isEqualTo("false");
      assertThat(troubles.next("broker-lost").code()).isEqualTo("broker-lost");
    }
  }

  @Test
  void aMessageCommittedLaterGoesOutAtOnceAfterAWake() {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Subscriber ear = Subscriber.connect(broker.url(), "ear").subscribe(RESULT, 1);
        OutboxPublisher publisher = publisher(broker.url())) {
      publisher.start();
      troubles.next("connected");
      for (int i = 0; i < 20; i++) {
        outbox.commit(RESULT, false, "late " + i);
        publisher.wake();
        assertThat(ear.next().payload()).isEqualTo("late " + i);
      }
      assertThat(outbox.awaitEmpty()).isTrue();
    }
  }

  @Test
  void retainedMessagesAreRetained() {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        OutboxPublisher publisher = publisher(broker.url())) {
      outbox.commit("restpoint/bench/no3-a/state", true, "{}");
      publisher.start();
      assertThat(outbox.awaitEmpty()).isTrue();
      try (Subscriber later = Subscriber.connect(broker.url(), "later").subscribe("#", 1)) {
        assertThat(later.next(message -> message.topic().endsWith("state")).retained()).isTrue();
      }
    }
  }

  @Test
  void transientMessagesGoOutWhileConnectedAndAreCountedWhenDropped() {
    try (Mosquitto broker = Mosquitto.open(folder).start();
        Subscriber ear = Subscriber.connect(broker.url(), "ear").subscribe("t", 0);
        OutboxPublisher publisher = publisher(broker.url())) {
      assertThat(publisher.publishTransient("t", "too early")).isFalse();
      publisher.start();
      troubles.next("connected");
      assertThat(publisher.publishTransient("t", "now")).isTrue();
      assertThat(ear.next().payload()).isEqualTo("now");
      PublisherCounts counts = publisher.counts();
      assertThat(counts.transientSent()).isEqualTo(1);
      assertThat(counts.transientDropped()).isEqualTo(1);
    }
  }

  @Test
  void aBrokerThatDoesNotListenIsToldOnceWithItsRemedy() {
    URI nobody = URI.create("tcp://127.0.0.1:1");
    OutboxPublisher publisher = publisher(nobody);
    publisher.start();
    assertThat(troubles.next())
        .isEqualTo(
            new BrokerTrouble(
                "broker-refused",
                "broker tcp://127.0.0.1:1 refused the connection: nothing listens there",
                "Start the broker, or set broker: embedded."));
    assertThat(publisher.check())
        .isInstanceOfSatisfying(
            BrokerHealth.Refused.class,
            refused -> assertThat(refused.trouble().code()).isEqualTo("broker-refused"));
    publisher.close();
    publisher.close();
    assertThat(publisher.check()).isEqualTo(new BrokerHealth.Closed());
  }

  @Test
  void aWrongPasswordIsToldWithTheUserAndWithoutThePassword() {
    try (Mosquitto broker = Mosquitto.guarded(folder, "bench", "right").start();
        OutboxPublisher publisher =
            publisher(
                new BrokerAddress(broker.url(), Optional.of("bench"), "wrong"::toCharArray))) {
      publisher.start();
      assertThat(troubles.next())
          .isEqualTo(
              new BrokerTrouble(
                  "broker-not-authorised",
                  "broker %s does not accept the user bench with this password"
                      .formatted(broker.url()),
                  "Check the user and the first line of the password file, and what the broker"
                      + " allows this user."));
    }
  }

  @Test
  void aBrokerThatAsksForAUserSaysSo() {
    try (Mosquitto broker = Mosquitto.guarded(folder, "bench", "right").start();
        OutboxPublisher publisher = publisher(broker.url())) {
      publisher.start();
      assertThat(troubles.next().text())
          .isEqualTo(
              "broker %s accepts no client without a user and a password".formatted(broker.url()));
    }
  }

  @Test
  void theRightPasswordIsReadAnewForEachConnection() {
    try (Mosquitto broker = Mosquitto.guarded(folder, "bench", "right").start()) {
      List<char[]> passwords = new CopyOnWriteArrayList<>();
      passwords.add("old".toCharArray());
      passwords.add("right".toCharArray());
      BrokerAddress address =
          new BrokerAddress(
              broker.url(),
              Optional.of("bench"),
              () -> passwords.size() > 1 ? passwords.remove(0) : passwords.get(0));
      try (OutboxPublisher publisher = publisher(address)) {
        publisher.start();
        assertThat(troubles.next().code()).isEqualTo("broker-not-authorised");
        assertThat(troubles.next().code()).isEqualTo("connected");
      }
    }
  }

  @Test
  void anUnknownHostIsToldByItsName() {
    try (OutboxPublisher publisher = publisher(URI.create("tcp://no-such-host.invalid:1883"))) {
      publisher.start();
      assertThat(troubles.next().text())
          .isEqualTo(
              "broker tcp://no-such-host.invalid:1883 cannot be found: the host"
                  + " no-such-host.invalid is not known");
    }
  }
}
