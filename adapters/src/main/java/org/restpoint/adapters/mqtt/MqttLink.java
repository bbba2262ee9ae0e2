package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkTally;
import org.restpoint.adapters.link.LinkTrouble;
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

  private final MqttReadings readings;
  private final MqttLinkSettings settings;
  private final LinkListener listener;
  private final LongSupplier nanos;
  private final LinkTally tally = new LinkTally();
  private final SometimesTold rejections;
  private final SometimesTold drops;
  private volatile Condition condition = Condition.NEW;
  private volatile String detail = "";
  private volatile @Nullable Instant lastArrival;
  private long quietSinceNanos;

  MqttLink(
      MqttReadings readings, MqttLinkSettings settings, LinkListener listener, LongSupplier nanos) {
    this.readings = readings;
    this.settings = settings;
    this.listener = listener;
    this.nanos = nanos;
    this.rejections = new SometimesTold(ONE_MINUTE, nanos);
    this.drops = new SometimesTold(ONE_MINUTE, nanos);
  }

  @Override
  public synchronized void start() {
    if (condition != Condition.NEW) {
      throw new IllegalStateException("the link was started or closed before");
    }
    condition = Condition.OPENING;
    readings.add(this);
  }

  @Override
  public LinkHealth check() {
    if (condition == Condition.OPENING && readings.check() instanceof BrokerHealth.Refused broker) {
      BrokerTrouble trouble = broker.trouble();
      return new LinkHealth(
          Condition.LOST, trouble.text() + ". " + trouble.remedy(), Optional.empty());
    }
    return new LinkHealth(condition, detail, Optional.ofNullable(lastArrival));
  }

  @Override
  public LinkCounts counts() {
    return tally.counts();
  }

  /** Takes no more readings; the connection stays for the other links. */
  @Override
  public synchronized void close() {
    condition = Condition.CLOSED;
    detail = "";
    readings.remove(this);
  }

  String topic() {
    return settings.topic();
  }

  /** The broker took the subscription: from here on silence counts. */
  void subscribed() {
    quietSinceNanos = nanos.getAsLong();
    if (condition == Condition.LOST) {
      tell("broker-back", "messages on %s are listened to again".formatted(topic()), "");
    }
    become(Condition.READING, "");
  }

  /** The broker is away, or refuses the subscription. */
  void lost(BrokerTrouble trouble) {
    String words = trouble.text() + ". " + trouble.remedy();
    boolean news = condition != Condition.LOST || !detail.equals(words);
    if (become(Condition.LOST, words) && news) {
      tell(trouble.code(), trouble.text(), trouble.remedy());
    }
  }

  /** A message found the queue before the link's thread full. */
  void dropped() {
    tally.offered(false);
  }

  void take(Arrival arrival) {
    if (condition == Condition.CLOSED) {
      return;
    }
    if (!arrival.retained()) {
      heard(arrival.time());
    }
    try {
      boolean taken = listener.reading(read(arrival));
      tally.offered(taken);
      if (!taken && drops.now()) {
        tell(
            "hand-over-full",
            "readings on %s come faster than they are taken; %d dropped so far"
                .formatted(topic(), tally.counts().dropped()),
            "Let the device send less often.");
      }
    } catch (RejectedMessageException e) {
      tally.rejected();
      if (rejections.now()) {
        tell(
            "message-rejected",
            "message on %s rejected: %s; it begins: %s"
                .formatted(topic(), e.getMessage(), PayloadSample.of(arrival.payload())),
            "Compare the message with the probe's link settings; %d rejected so far."
                .formatted(tally.counts().rejected()));
      }
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
    lastArrival = time;
    quietSinceNanos = nanos.getAsLong();
    if (condition == Condition.SILENT && become(Condition.READING, "")) {
      tell("data-back", "messages on %s are coming again".formatted(topic()), "");
    }
  }

  /** Tells a silence that has lasted too long, once; returns how long until the next look. */
  Duration watchSilence() {
    if (condition != Condition.READING) {
      return settings.noDataAfter();
    }
    Duration quiet = Duration.ofNanos(nanos.getAsLong() - quietSinceNanos);
    Duration left = settings.noDataAfter().minus(quiet);
    if (left.isNegative() || left.isZero()) {
      String text =
          "nothing has come on %s for %d s".formatted(topic(), settings.noDataAfter().toSeconds());
      String remedy = "Check that the device is on and publishes to this topic of this broker.";
      if (become(Condition.SILENT, text + ". " + remedy)) {
        tell("no-data", text, remedy);
      }
      return settings.noDataAfter();
    }
    return left;
  }

  /** A closed link stays closed. */
  private synchronized boolean become(Condition next, String words) {
    if (condition == Condition.CLOSED) {
      return false;
    }
    condition = next;
    detail = words;
    return true;
  }

  private void tell(String code, String text, String remedy) {
    listener.trouble(new LinkTrouble(code, text, remedy));
  }
}
