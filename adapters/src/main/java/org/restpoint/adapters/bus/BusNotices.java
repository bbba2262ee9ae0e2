package org.restpoint.adapters.bus;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.function.Consumer;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.link.Recurrence;

/**
 * What is told about one probe on a bus, in words. What can come with every ask is told the first
 * time and then at most once a minute, with a count.
 */
final class BusNotices {

  private static final Duration ONCE_IN = Duration.ofMinutes(1);

  private final PollSettings settings;
  private final Consumer<LinkTrouble> teller;
  private final Recurrence rejections = new Recurrence(ONCE_IN);
  private final Recurrence misses = new Recurrence(ONCE_IN);
  private Outcome.Rejected latest = new Outcome.Rejected("", "");

  BusNotices(PollSettings settings, Consumer<LinkTrouble> teller) {
    this.settings = settings;
    this.teller = teller;
  }

  void rejected(Outcome.Rejected answer, long nanos) {
    latest = answer;
    tellRejections(rejections.happened(nanos));
  }

  void missed(long nanos) {
    tellMisses(misses.happened(nanos));
  }

  /** Tells what was held back and has fallen due. */
  void due(long nanos) {
    tellRejections(rejections.due(nanos));
    tellMisses(misses.due(nanos));
  }

  private void tellRejections(long count) {
    if (count > 0) {
      tell(
          "answer-rejected",
          count == 1
              ? "%s gave an answer that is not a reading: %s"
                  .formatted(settings.device(), latest.reason())
              : "%s gave %d more answers that are not a reading, the latest: %s"
                  .formatted(settings.device(), count, latest.reason()),
          latest.remedy());
    }
  }

  private void tellMisses(long count) {
    if (count > 0) {
      tell(
          "no-answer",
          count == 1
              ? "%s did not answer".formatted(settings.device())
              : "%s did not answer %d more times".formatted(settings.device(), count),
          settings.whenSilent());
    }
  }

  LinkTrouble noData() {
    return new LinkTrouble(
        "no-data",
        "%s has not answered for %s".formatted(settings.device(), seconds(settings.noDataAfter())),
        settings.whenSilent());
  }

  void dataBack() {
    tell("data-back", "%s answers again".formatted(settings.device()), "");
  }

  private void tell(String code, String text, String remedy) {
    teller.accept(new LinkTrouble(code, text, remedy));
  }

  private static String seconds(Duration span) {
    return BigDecimal.valueOf(span.toMillis(), 3).stripTrailingZeros().toPlainString() + " s";
  }
}
