package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.util.function.LongSupplier;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.link.Recurrence;
import org.restpoint.adapters.text.Excerpt;

/**
 * Tells of one kind of message that is not taken: the first at once, later ones at most once a
 * minute with how many they were, and the latest as a sample. Used by one thread.
 */
final class Rejections {

  private static final Duration ONCE_IN = Duration.ofMinutes(1);

  private final String code;
  private final String remedy;
  private final String topic;
  private final LinkListener listener;
  private final LongSupplier nanos;
  private final Recurrence recurrence = new Recurrence(ONCE_IN);
  private String latest = "";

  Rejections(String code, String remedy, String topic, LinkListener listener, LongSupplier nanos) {
    this.code = code;
    this.remedy = remedy;
    this.topic = topic;
    this.listener = listener;
    this.nanos = nanos;
  }

  /**
   * One more.
   *
   * @param why the reason, in the middle of a sentence
   * @param payload the message, of which the beginning is shown
   */
  void happened(String why, byte[] payload) {
    latest = "%s; it begins: %s".formatted(why, Excerpt.of(payload));
    tell(recurrence.happened(nanos.getAsLong()));
  }

  /** Tells what was held back and has fallen due. */
  void due() {
    tell(recurrence.due(nanos.getAsLong()));
  }

  private void tell(long count) {
    if (count > 0) {
      String text =
          count == 1
              ? "message on %s rejected: %s".formatted(topic, latest)
              : "%d more messages on %s rejected, the latest: %s".formatted(count, topic, latest);
      listener.trouble(new LinkTrouble(code, text, remedy));
    }
  }
}
