package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.LongSupplier;
import org.restpoint.adapters.link.Delivery;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkState;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.link.Recurrence;
import org.restpoint.adapters.text.Excerpt;
import org.restpoint.stability.reading.Reading;

/**
 * One probe's readings from a topic of the broker, over the connection of {@link MqttReadings}. A
 * message that the broker had retained is rejected, since its age is unknown; so is one longer than
 * {@value #LONGEST_BYTES} bytes and one that is not a reading by the settings.
 */
public final class MqttLink implements Link {

  /** A reading is a few dozen bytes; a device's whole status fits in four kilobytes. */
  static final int LONGEST_BYTES = 4_096;

  private static final Duration ONE_MINUTE = Duration.ofMinutes(1);
  private static final Duration CLOSE_WITHIN = Duration.ofSeconds(2);

  private final MqttReadings readings;
  private final MqttLinkSettings settings;
  private final LinkListener listener;
  private final LongSupplier nanos;
  private final Delivery delivery;
  private final LinkState state = new LinkState();
  private final ReentrantLock handing = new ReentrantLock();
  private final Recurrence rejections = new Recurrence(ONE_MINUTE);
  private String latestRejection = "";
  private long quietSinceNanos;

  MqttLink(
      MqttReadings readings, MqttLinkSettings settings, LinkListener listener, LongSupplier nanos) {
    this.readings = readings;
    this.settings = settings;
    this.listener = listener;
    this.nanos = nanos;
    this.delivery = new Delivery("topic " + settings.topic(), listener, nanos);
  }

  @Override
  public void start() {
    state.start("topic " + topic());
    readings.add(this);
  }

  @Override
  public LinkHealth check() {
    LinkHealth health = state.health();
    if (health.condition() == Condition.OPENING
        && readings.check() instanceof BrokerHealth.Refused broker) {
      return new LinkHealth(
          Condition.LOST, said(broker.trouble()).sentences(), health.lastArrival());
    }
    return health;
  }

  @Override
  public LinkCounts counts() {
    return delivery.counts();
  }

  /**
   * Takes no more readings, and waits for one that is just being handed over; the connection stays
   * for the other links.
   */
  @Override
  public void close() {
    state.become(Condition.CLOSED, "");
    readings.remove(this);
    try {
      if (handing.tryLock(CLOSE_WITHIN.toMillis(), TimeUnit.MILLISECONDS)) {
        handing.unlock();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  String topic() {
    return settings.topic();
  }

  /** The broker took the subscription: from here on silence counts. */
  void subscribed() {
    quietSinceNanos = nanos.getAsLong();
    if (state.condition() == Condition.LOST) {
      tell("broker-back", "messages on %s are listened to again".formatted(topic()), "");
    }
    state.become(Condition.READING, "");
  }

  /** The broker is away, or refuses the subscription. */
  void lost(BrokerTrouble trouble) {
    LinkTrouble said = said(trouble);
    LinkHealth before = state.health();
    boolean news =
        before.condition() != Condition.LOST || !before.detail().equals(said.sentences());
    if (state.become(Condition.LOST, said) && news) {
      listener.trouble(said);
    }
  }

  private static LinkTrouble said(BrokerTrouble trouble) {
    return new LinkTrouble(trouble.code(), trouble.text(), trouble.remedy());
  }

  /** A message found the queue before the link's thread full. */
  void dropped() {
    if (state.condition() != Condition.CLOSED) {
      delivery.dropped();
    }
  }

  void take(Arrival arrival) {
    handing.lock();
    try {
      if (state.condition() != Condition.CLOSED) {
        takeOpen(arrival);
      }
    } finally {
      handing.unlock();
    }
  }

  private void takeOpen(Arrival arrival) {
    if (!arrival.retained()) {
      heard(arrival.time());
    }
    try {
      delivery.reading(read(arrival));
    } catch (RejectedMessageException e) {
      delivery.rejected();
      latestRejection =
          "%s; it begins: %s".formatted(e.getMessage(), Excerpt.of(arrival.payload()));
      tellRejections(rejections.happened(nanos.getAsLong()));
    }
  }

  private void tellRejections(long count) {
    if (count > 0) {
      tell(
          "message-rejected",
          count == 1
              ? "message on %s rejected: %s".formatted(topic(), latestRejection)
              : "%d more messages on %s rejected, the latest: %s"
                  .formatted(count, topic(), latestRejection),
          "Compare the message with the probe's link settings.");
    }
  }

  private Reading read(Arrival arrival) throws RejectedMessageException {
    if (arrival.retained()) {
      throw new RejectedMessageException(
          "it was retained by the broker, so its age is unknown (let the device send unretained)");
    }
    if (arrival.payload().length > LONGEST_BYTES) {
      throw new RejectedMessageException(
          "it has %d bytes, at most %d are read"
              .formatted(arrival.payload().length, LONGEST_BYTES));
    }
    return settings.format().read(arrival.time(), arrival.payload());
  }

  private void heard(Instant time) {
    quietSinceNanos = nanos.getAsLong();
    boolean wasSilent = state.condition() == Condition.SILENT;
    state.arrived(time);
    if (wasSilent) {
      tell("data-back", "messages on %s are coming again".formatted(topic()), "");
    }
  }

  /** Tells what has fallen due, a long silence too; returns how long until the next look. */
  Duration watch() {
    tellRejections(rejections.due(nanos.getAsLong()));
    delivery.due();
    return watchSilence();
  }

  private Duration watchSilence() {
    if (state.condition() != Condition.READING) {
      return settings.noDataAfter();
    }
    Duration quiet = Duration.ofNanos(nanos.getAsLong() - quietSinceNanos);
    Duration left = settings.noDataAfter().minus(quiet);
    if (left.isNegative() || left.isZero()) {
      LinkTrouble silence =
          new LinkTrouble(
              "no-data",
              "nothing has come on %s for %d s"
                  .formatted(topic(), settings.noDataAfter().toSeconds()),
              "Check that the device is on and publishes to this topic of this broker.");
      if (state.become(Condition.SILENT, silence)) {
        listener.trouble(silence);
      }
      return settings.noDataAfter();
    }
    return left;
  }

  private void tell(String code, String text, String remedy) {
    listener.trouble(new LinkTrouble(code, text, remedy));
  }
}
