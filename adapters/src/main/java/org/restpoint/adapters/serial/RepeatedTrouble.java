package org.restpoint.adapters.serial;

import java.time.Duration;
import java.util.function.Consumer;
import java.util.function.LongFunction;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.link.Recurrence;

/**
 * A trouble that can come with every line: told the first time, and then at most once a minute with
 * how many times it came.
 */
final class RepeatedTrouble {

  private static final Duration ONCE_IN = Duration.ofMinutes(1);

  private final String code;
  private final LongFunction<String> text;
  private final String remedy;
  private final Consumer<LinkTrouble> teller;
  private final Recurrence recurrence = new Recurrence(ONCE_IN);
  private String latest = "";

  /**
   * @param text what happened so many times, up to what is told of the latest time
   */
  RepeatedTrouble(
      String code, LongFunction<String> text, String remedy, Consumer<LinkTrouble> teller) {
    this.code = code;
    this.text = text;
    this.remedy = remedy;
    this.teller = teller;
  }

  /**
   * It happened once more.
   *
   * @param detail what is told of this time
   */
  void happened(String detail, long nanos) {
    latest = detail;
    tell(recurrence.happened(nanos));
  }

  /** Tells what was held back and has fallen due. */
  void due(long nanos) {
    tell(recurrence.due(nanos));
  }

  private void tell(long count) {
    if (count > 0) {
      teller.accept(new LinkTrouble(code, text.apply(count) + latest, remedy));
    }
  }
}
