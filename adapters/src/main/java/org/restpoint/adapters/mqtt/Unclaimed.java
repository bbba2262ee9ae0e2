package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.link.Recurrence;
import org.restpoint.adapters.text.Excerpt;

/**
 * Messages on a topic with a captured level that belong to no probe: counted, and told at most once
 * a minute, with the names that they came under. Safe for several threads.
 */
final class Unclaimed {

  /** So many names are told at once; there may be thousands. */
  private static final int MOST_NAMES = 5;

  private static final Duration ONCE_IN = Duration.ofMinutes(1);

  private final TopicFilter filter;
  private final Recurrence recurrence = new Recurrence(ONCE_IN);
  private final Set<String> names = new TreeSet<>();
  private boolean moreNames;
  private long count;

  Unclaimed(TopicFilter filter) {
    this.filter = filter;
  }

  /** Takes note of a message that came under this name; {@link #due} tells of it. */
  synchronized void happened(String name) {
    count++;
    recurrence.held();
    if (names.size() < MOST_NAMES) {
      names.add(name);
    } else {
      moreNames |= !names.contains(name);
    }
  }

  /** How many there were so far. */
  synchronized long count() {
    return count;
  }

  /** What is to be told now. */
  synchronized Optional<LinkTrouble> due(long nanos) {
    long told = recurrence.due(nanos);
    if (told == 0) {
      return Optional.empty();
    }
    String text =
        "%s on %s came under a name that no probe has: %s%s"
            .formatted(
                told == 1 ? "a message" : told + " messages",
                filter.text(),
                String.join(", ", names.stream().map(Excerpt::of).toList()),
                moreNames ? " and others" : "");
    names.clear();
    moreNames = false;
    return Optional.of(
        new LinkTrouble(
            "message-unclaimed",
            text,
            "Name a probe so, or set captured of the probe that is meant; or keep the device off"
                + " this topic."));
  }
}
