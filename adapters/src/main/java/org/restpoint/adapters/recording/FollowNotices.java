package org.restpoint.adapters.recording;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.function.Consumer;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.link.Recurrence;

/**
 * What is told of a growing file, in words. Rejected rows are told the first time and then at most
 * once a minute, with how many they were and the latest of them.
 */
final class FollowNotices {

  private static final Duration ONCE_IN = Duration.ofMinutes(1);

  private final FollowSettings settings;
  private final Consumer<LinkTrouble> teller;
  private final Recurrence rejections = new Recurrence(ONCE_IN);
  private String latest = "";
  private String remedy = "";

  FollowNotices(FollowSettings settings, Consumer<LinkTrouble> teller) {
    this.settings = settings;
    this.teller = teller;
  }

  void rejected(SkippedLine line, long nanos) {
    latest = "line %d: %s".formatted(line.line(), line.reason());
    remedy =
        switch (line.skip()) {
          case TIME_OFF ->
              "Set the clock of what writes it, say its zone, or let time-within be more";
          case TIME_BACK -> "See whether the clock of what writes it was put back";
          default -> "Compare it with the keys of the link";
        };
    tellRejections(rejections.happened(nanos));
  }

  /** Tells what was held back and has fallen due. */
  void due(long nanos) {
    tellRejections(rejections.due(nanos));
  }

  private void tellRejections(long count) {
    if (count > 0) {
      tell(
          "line-rejected",
          count == 1
              ? "%s %s".formatted(settings.file(), latest)
              : "%d more rows of %s were rejected, the latest %s"
                  .formatted(count, settings.file(), latest),
          remedy);
    }
  }

  LinkTrouble absent() {
    return new LinkTrouble(
        "recording-unreadable",
        "there is no recording " + settings.file(),
        "Put the recording there; it is tried again");
  }

  LinkTrouble unreadable(String why) {
    return new LinkTrouble("recording-unreadable", why, "Mend it; it is tried again");
  }

  LinkTrouble misfit(String why) {
    return new LinkTrouble(
        "recording-unreadable",
        "%s %s".formatted(settings.file(), why),
        "Mend the keys and start again, or write the file anew");
  }

  void back() {
    tell("recording-back", "the recording %s is there".formatted(settings.file()), "");
  }

  void replaced() {
    tell(
        "recording-replaced",
        "another file stands at %s; it is read from its beginning".formatted(settings.file()),
        "");
  }

  void rewritten() {
    tell(
        "recording-rewritten",
        "the recording %s was cut or written anew; it is read from its beginning"
            .formatted(settings.file()),
        "");
  }

  LinkTrouble noData() {
    return new LinkTrouble(
        "no-data",
        "nothing was added to the recording %s for %s s"
            .formatted(
                settings.file(),
                BigDecimal.valueOf(settings.noDataAfter().toMillis(), 3)
                    .stripTrailingZeros()
                    .toPlainString()),
        "See whether what writes it still runs, and how often it writes");
  }

  void dataBack() {
    tell("data-back", "the recording %s grows again".formatted(settings.file()), "");
  }

  void tell(LinkTrouble trouble) {
    teller.accept(trouble);
  }

  private void tell(String code, String text, String what) {
    teller.accept(new LinkTrouble(code, text, what));
  }
}
