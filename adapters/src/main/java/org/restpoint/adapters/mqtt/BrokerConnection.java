package org.restpoint.adapters.mqtt;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import java.util.stream.IntStream;
import org.eclipse.paho.client.mqttv3.IMqttActionListener;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.jspecify.annotations.Nullable;

/**
 * One connection to the broker, from its making to its end; never made again. One thread uses it;
 * what the MQTT library reports on threads of its own is put aside and rings the doorbell.
 */
final class BrokerConnection {

  private static final int REFUSED = 128;
  private static final Duration FAREWELL = Duration.ofMillis(400);

  private final BrokerAddress address;
  private final ConnectionPlan plan;
  private final ConnectionTimes times;
  private final Doorbell doorbell;
  private final InstantSource clock;
  private final LongSupplier nanos;
  private final Diagnosis diagnosis;
  private final GuardedSocketFactory sockets = new GuardedSocketFactory();
  private final Acknowledgements acknowledgements;
  private final AtomicInteger transientUnderWay = new AtomicInteger();
  private volatile @Nullable Throwable cause;
  private volatile boolean lost;
  private @Nullable MqttAsyncClient client;

  BrokerConnection(
      BrokerAddress address,
      ConnectionPlan plan,
      ConnectionTimes times,
      Doorbell doorbell,
      InstantSource clock,
      LongSupplier nanos) {
    this.address = address;
    this.plan = plan;
    this.times = times;
    this.doorbell = doorbell;
    this.clock = clock;
    this.nanos = nanos;
    this.diagnosis = new Diagnosis(address);
    this.acknowledgements = new Acknowledgements(doorbell);
  }

  /** Connects; returns without a connection when given up. */
  void open(Consumer<Arrival> arrivals, BooleanSupplier givenUp) throws BrokerFault {
    MqttConnectOptions options = options();
    Answer answer = new Answer(doorbell, nanos);
    try {
      MqttAsyncClient made =
          new MqttAsyncClient(address.display(), plan.clientId(), new MemoryPersistence());
      client = made;
      made.setManualAcks(plan.acknowledgesByHand());
      made.setCallback(new Inbound(arrivals));
      made.connect(options, null, answer);
    } catch (MqttException e) {
      throw new BrokerFault(diagnosis.ofAttempt(e, times.connect()));
    }
    if (answer.await(times.connect(), givenUp)) {
      Throwable failure = answer.failure();
      if (failure != null) {
        throw new BrokerFault(diagnosis.ofAttempt(failure, times.connect()));
      }
    } else if (!givenUp.getAsBoolean()) {
      throw new BrokerFault(diagnosis.noAnswer(times.connect()));
    }
  }

  private MqttConnectOptions options() throws BrokerFault {
    MqttConnectOptions options = plan.options(times);
    options.setSocketFactory(sockets);
    if (address.user().isPresent()) {
      options.setUserName(address.user().get());
      try {
        options.setPassword(address.password().get());
      } catch (RuntimeException e) {
        throw new BrokerFault(diagnosis.passwordUnreadable(e));
      }
    }
    return options;
  }

  /** Refuses to go on with a connection that has ended. */
  void requireAlive() throws BrokerFault {
    if (lost || client == null || !client.isConnected()) {
      throw new BrokerFault(diagnosis.lost(cause));
    }
  }

  /** Sends with QoS 1; the number comes out of {@link #nextAcknowledged()} in time. */
  void publish(long sequence, String topic, boolean retained, String payload) throws BrokerFault {
    send(topic, payload, 1, retained, sequence, acknowledgements);
  }

  /** Sends with QoS 1, retained; the answer is the broker's acknowledgement. */
  Answer publishRetained(String topic, String payload) throws BrokerFault {
    Answer answer = new Answer(doorbell, nanos);
    send(topic, payload, 1, true, 0L, answer);
    return answer;
  }

  /** Sends with QoS 0. */
  void publishTransient(String topic, String payload) throws BrokerFault {
    transientUnderWay.incrementAndGet();
    send(topic, payload, 0, false, 0L, new TransientGone());
  }

  /** How many messages of QoS 0 have not yet left this machine. */
  int transientUnderWay() {
    return transientUnderWay.get();
  }

  private void send(
      String topic,
      String payload,
      int qos,
      boolean retained,
      Long context,
      IMqttActionListener listener)
      throws BrokerFault {
    try {
      live()
          .publish(
              topic, payload.getBytes(StandardCharsets.UTF_8), qos, retained, context, listener);
    } catch (MqttException e) {
      throw new BrokerFault(diagnosis.lost(e));
    }
  }

  /** The number of a message that the broker has acknowledged; null when there is none now. */
  @Nullable Long nextAcknowledged() {
    return acknowledgements.next();
  }

  /**
   * Subscribes and waits for the broker's answer.
   *
   * @param quality the QoS, 0 or 1, asked for each topic
   * @return the topics that the broker refuses; none when given up
   */
  List<String> subscribe(List<String> topics, int quality, BooleanSupplier givenUp)
      throws BrokerFault {
    int[] qos = new int[topics.size()];
    Arrays.fill(qos, quality);
    Answer answer = new Answer(doorbell, nanos);
    try {
      live().subscribe(topics.toArray(String[]::new), qos, null, answer);
    } catch (MqttException e) {
      throw new BrokerFault(diagnosis.lost(e));
    }
    if (!answer.await(times.answer(), givenUp)) {
      if (givenUp.getAsBoolean()) {
        return List.of();
      }
      throw new BrokerFault(diagnosis.frozen(times.answer()));
    }
    List<String> refused =
        IntStream.range(0, topics.size())
            .filter(i -> answer.granted(i) == REFUSED)
            .mapToObj(topics::get)
            .toList();
    if (refused.isEmpty() && answer.failure() != null) {
      throw new BrokerFault(diagnosis.lost(answer.failure()));
    }
    return refused;
  }

  /** Ends a subscription; the answer is not awaited. */
  void unsubscribe(String topic) throws BrokerFault {
    try {
      live().unsubscribe(topic);
    } catch (MqttException e) {
      throw new BrokerFault(diagnosis.lost(e));
    }
  }

  /** Tells the broker that a message is in safe hands. */
  void acknowledge(Arrival arrival) throws BrokerFault {
    try {
      live().messageArrivedComplete(arrival.id(), arrival.qos());
    } catch (MqttException e) {
      throw new BrokerFault(diagnosis.lost(e));
    }
  }

  Diagnosis diagnosis() {
    return diagnosis;
  }

  private MqttAsyncClient live() throws BrokerFault {
    requireAlive();
    if (client == null) {
      throw new BrokerFault(diagnosis.lost(null));
    }
    return client;
  }

  /** Closes the socket from any thread; the broker then speaks the will. */
  void cut() {
    sockets.cut();
  }

  /**
   * Ends the connection; bounded, idempotent. The client's threads end by themselves when they find
   * the socket closed: taking the client apart from here while it is being put together would leave
   * one of them waiting for ever.
   *
   * @param inOrder whether the broker is told; otherwise it speaks the will
   */
  void end(boolean inOrder) {
    MqttAsyncClient ending = client;
    client = null;
    try {
      if (inOrder && ending != null && ending.isConnected()) {
        Answer answer = new Answer(doorbell, nanos);
        ending.disconnect(FAREWELL.toMillis(), null, answer);
        answer.await(FAREWELL, () -> false);
      }
    } catch (MqttException e) {
      // It has ended on another thread already; the socket is closed either way.
    } finally {
      sockets.cut();
    }
  }

  private final class Inbound implements MqttCallback {

    private final Consumer<Arrival> arrivals;

    Inbound(Consumer<Arrival> arrivals) {
      this.arrivals = arrivals;
    }

    @Override
    public void connectionLost(Throwable thrown) {
      cause = thrown;
      lost = true;
      doorbell.ring();
    }

    @Override
    public void messageArrived(String topic, MqttMessage message) {
      arrivals.accept(
          new Arrival(
              clock.instant().truncatedTo(ChronoUnit.MILLIS),
              topic,
              message.getPayload(),
              message.isRetained(),
              message.isDuplicate(),
              message.getId(),
              message.getQos()));
      doorbell.ring();
    }

    @Override
    public void deliveryComplete(IMqttDeliveryToken token) {
      // Each message has a listener of its own.
    }
  }

  private final class TransientGone implements IMqttActionListener {

    @Override
    public void onSuccess(IMqttToken token) {
      transientUnderWay.decrementAndGet();
      doorbell.ring();
    }

    @Override
    public void onFailure(IMqttToken token, Throwable thrown) {
      transientUnderWay.decrementAndGet();
      doorbell.ring();
    }
  }
}
