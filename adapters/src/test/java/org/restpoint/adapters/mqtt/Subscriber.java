package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.fail;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Predicate;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttCallbackExtended;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.jspecify.annotations.Nullable;

/**
 * Somebody else at the broker, for tests: hears and sends. With a lasting session it comes back by
 * itself after the broker was away.
 */
public final class Subscriber implements AutoCloseable {

  /** What it has heard. */
  public record Heard(String topic, String payload, boolean retained) {}

  private static final long LIMIT_SECONDS = 30;
  private static final long BREATH_NANOS = 20_000_000;
  private static final long ANSWER_MILLIS = 10_000;

  private final MqttAsyncClient client;
  private final BlockingQueue<Heard> heard = new LinkedBlockingQueue<>();

  private Subscriber(MqttAsyncClient client) {
    this.client = client;
  }

  /** Connects anew, with nothing kept at the broker. */
  public static Subscriber connect(URI broker, String clientId) {
    return connect(broker, clientId, new MqttConnectOptions());
  }

  /** Connects with a session that the broker keeps, and reconnects by itself. */
  public static Subscriber lasting(URI broker, String clientId) {
    MqttConnectOptions options = new MqttConnectOptions();
    options.setCleanSession(false);
    options.setAutomaticReconnect(true);
    options.setMaxReconnectDelay(1_000);
    return connect(broker, clientId, options);
  }

  private static Subscriber connect(URI broker, String clientId, MqttConnectOptions options) {
    try {
      Subscriber made =
          new Subscriber(new MqttAsyncClient(broker.toString(), clientId, new MemoryPersistence()));
      options.setMaxInflight(1_000);
      options.setMqttVersion(MqttConnectOptions.MQTT_VERSION_3_1_1);
      made.client.setCallback(made.new Ears());
      made.client.connect(options).waitForCompletion(ANSWER_MILLIS);
      // The embedded broker ends a connection whose first request is quicker than itself.
      LockSupport.parkNanos(BREATH_NANOS);
      return made;
    } catch (MqttException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Listens to a topic or filter. */
  public Subscriber subscribe(String filter, int qos) {
    try {
      client.subscribe(filter, qos).waitForCompletion(ANSWER_MILLIS);
      return this;
    } catch (MqttException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Sends, and waits for the acknowledgement where there is one. */
  public void publish(String topic, String payload, int qos, boolean retained) {
    publish(topic, payload.getBytes(StandardCharsets.UTF_8), qos, retained);
  }

  /** Sends bytes, and waits for the acknowledgement where there is one. */
  public void publish(String topic, byte[] payload, int qos, boolean retained) {
    try {
      client.publish(topic, payload, qos, retained).waitForCompletion(ANSWER_MILLIS);
    } catch (MqttException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The next message; fails when none comes. */
  public Heard next() {
    return next(any -> true);
  }

  /** The next message that fits; others before it are passed over. Fails when none comes. */
  public Heard next(Predicate<Heard> wanted) {
    try {
      while (true) {
        @Nullable Heard message = heard.poll(LIMIT_SECONDS, TimeUnit.SECONDS);
        if (message == null) {
          return fail("nothing that fits has come within %d s", LIMIT_SECONDS);
        }
        if (wanted.test(message)) {
          return message;
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  /** How many messages have been heard and not yet taken. */
  public int waiting() {
    return heard.size();
  }

  @Override
  public void close() {
    try {
      client.disconnectForcibly(0, 1, false);
      client.close(true);
    } catch (MqttException e) {
      throw new IllegalStateException(e);
    }
  }

  private final class Ears implements MqttCallbackExtended {

    @Override
    public void connectComplete(boolean again, String broker) {
      // A lasting session keeps its subscriptions.
    }

    @Override
    public void connectionLost(Throwable cause) {
      // A lasting session comes back by itself; another has heard what it will hear.
    }

    @Override
    public void messageArrived(String topic, MqttMessage message) {
      heard.add(
          new Heard(
              topic,
              new String(message.getPayload(), StandardCharsets.UTF_8),
              message.isRetained()));
    }

    @Override
    public void deliveryComplete(IMqttDeliveryToken token) {
      // Waited for where it was sent.
    }
  }
}
