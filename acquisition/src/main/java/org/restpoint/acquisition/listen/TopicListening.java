package org.restpoint.acquisition.listen;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.restpoint.acquisition.listen.Payloads.Leaf;
import org.restpoint.adapters.guess.Field;
import org.restpoint.adapters.guess.FieldGuess;
import org.restpoint.adapters.mqtt.BrokerException;
import org.restpoint.adapters.mqtt.Eavesdropper;
import org.restpoint.adapters.mqtt.TopicMessage;
import org.restpoint.adapters.quantity.Parsed;
import org.restpoint.adapters.text.DecimalNumber;
import org.restpoint.adapters.text.Excerpt;

/**
 * Listens to topics of a broker, shows what comes, and proposes how to read it. Of at most 200
 * topics; messages of further ones are passed over.
 */
public final class TopicListening {

  private static final Duration TICK = Duration.ofMillis(200);
  private static final int MOST_TOPICS = 200;
  private static final int MOST_SHOWN = 40;

  /** Of one topic alone so many messages are enough. */
  private static final int ENOUGH = 10;

  private final String filter;
  private final String broker;
  private final Consumer<String> terminal;
  private final BooleanSupplier givenUp;
  private final LongSupplier nanos;
  private final Map<String, TopicHeard> topics = new LinkedHashMap<>();
  private int count;

  /**
   * @param filter the topic, or a filter with {@code +} and {@code #}
   * @param broker where it is listened to, as it will stand in the station file
   * @param terminal where lines for the person go
   * @param givenUp whether the person has seen enough
   * @param nanos a clock that only runs forward, in nanoseconds
   */
  public TopicListening(
      String filter,
      String broker,
      Consumer<String> terminal,
      BooleanSupplier givenUp,
      LongSupplier nanos) {
    this.filter = filter;
    this.broker = broker;
    this.terminal = terminal;
    this.givenUp = givenUp;
    this.nanos = nanos;
  }

  /** Listens for a time at most. */
  public Outcome listen(Eavesdropper ear, Duration limit) throws InterruptedException {
    try {
      ear.open(filter);
      terminal.accept(
          "listening to %s at %s, for %d s at most; nothing is published"
              .formatted(filter, broker, limit.toSeconds()));
      long began = nanos.getAsLong();
      while (!isEnough()
          && !givenUp.getAsBoolean()
          && nanos.getAsLong() - began < limit.toNanos()) {
        ear.next(TICK).ifPresent(this::take);
      }
    } catch (BrokerException e) {
      if (topics.isEmpty()) {
        return new Outcome.NotOpened(String.valueOf(e.getMessage()));
      }
      terminal.accept(e.getMessage());
    }
    return told();
  }

  private boolean isEnough() {
    boolean one = filter.indexOf('+') < 0 && filter.indexOf('#') < 0;
    return one && count >= ENOUGH;
  }

  private void take(TopicMessage message) {
    TopicHeard heard = topics.get(message.topic());
    if (heard == null) {
      if (topics.size() >= MOST_TOPICS) {
        return;
      }
      heard = new TopicHeard(message.topic());
      topics.put(message.topic(), heard);
    }
    heard.take(message);
    count++;
    if (count <= MOST_SHOWN) {
      String raw = message.topic() + "  " + message.payload();
      terminal.accept(SideBySide.row(raw, shown(heard, message)));
    } else if (count == MOST_SHOWN + 1) {
      terminal.accept("  further messages are counted and not shown");
    }
  }

  private static String shown(TopicHeard heard, TopicMessage message) {
    return heard.guess().map(guess -> shown(guess, message.payload())).orElse("?");
  }

  private static String shown(FieldGuess guess, String payload) {
    Map<String, Leaf> leaves =
        Payloads.read(payload).map(Payloads.Payload::leaves).orElse(Map.of());
    Parsed parsed =
        guess
            .meaning()
            .parsed(value(leaves, guess.potential()), value(leaves, guess.temperature()));
    return parsed instanceof Parsed.Values values
        ? SideBySide.shown(Optional.empty(), values)
        : "not read: " + ((Parsed.Rejected) parsed).reason();
  }

  private static OptionalDouble value(Map<String, Leaf> leaves, Optional<Field> field) {
    return field
        .flatMap(any -> Optional.ofNullable(leaves.get(any.key())))
        .map(leaf -> DecimalNumber.in(leaf.text()))
        .orElse(OptionalDouble.empty());
  }

  private Outcome told() {
    if (topics.isEmpty()) {
      terminal.accept("no message came on %s".formatted(filter));
      terminal.accept(
          "Is it the right topic (upper and lower case count), and does the device publish to this broker? All topics: restpoint listen --topic '#' --broker %s"
              .formatted(broker));
      return new Outcome.NotUnderstood();
    }
    topics.values().forEach(this::tell);
    List<TopicHeard> understood =
        topics.values().stream().filter(heard -> heard.guess().isPresent()).toList();
    return understood.isEmpty()
        ? new Outcome.NotUnderstood()
        : new Outcome.Understood(TopicSection.of(understood, broker));
  }

  private void tell(TopicHeard heard) {
    String what =
        heard.guess().isPresent()
            ? "read"
            : "not read: expected a number, JSON or SenML with a potential or a temperature";
    terminal.accept("%s: %s, %s".formatted(Excerpt.of(heard.topic()), heard.rate(), what));
    if (heard.onlyRetained()) {
      terminal.accept(
          "  kept by the broker, who knows since when: the service takes only what is published while it listens. Let the device publish without the retain flag.");
    }
    heard
        .guess()
        .ifPresent(
            guess -> guess.doubts().forEach(doubt -> terminal.accept("  look at this: " + doubt)));
  }
}
