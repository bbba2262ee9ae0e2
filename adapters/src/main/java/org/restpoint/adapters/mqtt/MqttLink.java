package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
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
import org.restpoint.adapters.mqtt.Succession.Verdict;

/**
 * One probe's readings from a topic of the broker, over the connection of {@link MqttReadings}. A
 * message that the broker had retained is rejected, since its age is unknown; so is one that is too
 * long, one that is not a reading by the settings, and one that {@linkplain Succession does not
 * follow} on the last. A message with several readings counts once for each of them.
 */
public final class MqttLink implements Link {

  private static final Duration CLOSE_WITHIN = Duration.ofSeconds(2);

  private final MqttReadings readings;
  private final MqttLinkSettings settings;
  private final LinkListener listener;
  private final LongSupplier nanos;
  private final Delivery delivery;
  private final LinkState state = new LinkState();
  private final ReentrantLock handing = new ReentrantLock();
  private final Succession succession;
  private final Rejections rejections;
  private final Rejections duplicates;
  private byte[] latestPayload = {};
  private long quietSinceNanos;

  MqttLink(
      MqttReadings readings, MqttLinkSettings settings, LinkListener listener, LongSupplier nanos) {
    this.readings = readings;
    this.settings = settings;
    this.listener = listener;
    this.nanos = nanos;
    this.delivery = new Delivery("topic " + settings.topic(), listener, nanos);
    this.succession = new Succession(settings.timeWithin());
    this.rejections =
        new Rejections(
            "message-rejected",
            "Compare the message with the probe's link settings.",
            settings.topic(),
            listener,
            nanos);
    this.duplicates =
        new Rejections(
            "message-duplicate",
            "Nothing is lost; see why the device, or a bridge between brokers, sends it again.",
            settings.topic(),
            listener,
            nanos);
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

  TopicFilter filter() {
    return settings.filter();
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
      requireReadable(arrival);
      if (arrival.duplicate() && Arrays.equals(arrival.payload(), latestPayload)) {
        delivery.rejected();
        duplicates.happened("the broker marks it as sent before", arrival.payload());
        return;
      }
      List<Observation> said = settings.format().read(arrival.time(), arrival.payload());
      latestPayload = arrival.payload();
      carryOut(succession.judge(arrival.time(), said), arrival.payload());
    } catch (RejectedMessageException e) {
      delivery.rejected();
      rejections.happened(String.valueOf(e.getMessage()), arrival.payload());
    }
  }

  private void requireReadable(Arrival arrival) throws RejectedMessageException {
    if (arrival.retained()) {
      throw new RejectedMessageException(
          "it was retained by the broker, so its age is unknown (let the device send unretained)");
    }
    int longest = settings.format().longestBytes();
    if (arrival.payload().length > longest) {
      throw new RejectedMessageException(
          "it has %d bytes, at most %d are read".formatted(arrival.payload().length, longest));
    }
  }

  private void carryOut(List<Verdict> verdicts, byte[] payload) {
    List<String> refused = new ArrayList<>();
    List<String> again = new ArrayList<>();
    for (Verdict verdict : verdicts) {
      if (verdict instanceof Verdict.Next next) {
        delivery.reading(next.reading());
      } else {
        delivery.rejected();
        if (verdict instanceof Verdict.Refused why) {
          refused.add(why.why());
        } else {
          again.add(((Verdict.Again) verdict).why());
        }
      }
    }
    tellOf(refused, verdicts.size(), rejections, payload);
    tellOf(again, verdicts.size(), duplicates, payload);
  }

  private static void tellOf(List<String> whys, int of, Rejections kind, byte[] payload) {
    if (!whys.isEmpty()) {
      String first = whys.get(0);
      kind.happened(
          of == 1 ? first : "%d of its %d readings: %s".formatted(whys.size(), of, first), payload);
    }
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
    rejections.due();
    duplicates.due();
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

  /** Tells something that concerns this link's topic. */
  void tell(LinkTrouble trouble) {
    listener.trouble(trouble);
  }

  private void tell(String code, String text, String remedy) {
    tell(new LinkTrouble(code, text, remedy));
  }
}
