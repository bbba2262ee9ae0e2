package org.restpoint.adapters.mqtt;

import java.util.Optional;

/**
 * A topic to listen to, or many that differ in one level: {@code field/+/ise}. What stands at that
 * level is captured and says whose message it is. Refuses, with an {@link
 * IllegalArgumentException}, an empty topic, a second {@code +}, a {@code +} that is not a whole
 * level, and {@code #}.
 *
 * @param text the filter as the broker knows it
 */
public record TopicFilter(String text) {

  private static final String ANY = "+";

  public TopicFilter {
    if (!isSound(text)) {
      throw new IllegalArgumentException(
          "expected a topic, or one with a single level + as field/+/ise, found " + text);
    }
  }

  private static boolean isSound(String text) {
    int captured = 0;
    for (String level : text.split("/", -1)) {
      captured += level.equals(ANY) ? 1 : 0;
      if (level.indexOf('#') >= 0 || (level.indexOf('+') >= 0 && !level.equals(ANY))) {
        return false;
      }
    }
    return !text.isEmpty() && captured <= 1;
  }

  /** Whether it has a level that is captured. */
  public boolean captures() {
    return text.indexOf('+') >= 0;
  }

  /** The topic of one device: the captured level is its name, where there is such a level. */
  public String topic(String name) {
    return captures() ? before() + name + after() : text;
  }

  /** What a topic has at the captured level; empty where the filter does not fit the topic. */
  Optional<String> capturedFrom(String topic) {
    if (!captures()
        || !topic.startsWith(before())
        || !topic.endsWith(after())
        || topic.length() < before().length() + after().length()) {
      return Optional.empty();
    }
    String level = topic.substring(before().length(), topic.length() - after().length());
    return level.indexOf('/') >= 0 ? Optional.empty() : Optional.of(level);
  }

  private String before() {
    return text.substring(0, text.indexOf('+'));
  }

  private String after() {
    return text.substring(text.indexOf('+') + 1);
  }
}
