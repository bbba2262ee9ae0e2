package org.restpoint.adapters.serial;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.function.Consumer;
import org.restpoint.adapters.line.LineFraming;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.link.Recurrence;
import org.restpoint.adapters.text.Excerpt;

/**
 * What a serial link tells people about an open port, in words. What can come with every line is
 * told the first time and then at most once a minute, with a count.
 */
final class SerialNotices {

  private static final Duration ONCE_IN = Duration.ofMinutes(1);

  private final SerialSettings settings;
  private final Consumer<LinkTrouble> teller;
  private final Recurrence rejections = new Recurrence(ONCE_IN);
  private final Recurrence overlongs = new Recurrence(ONCE_IN);
  private String latestRejection = "";

  SerialNotices(SerialSettings settings, Consumer<LinkTrouble> teller) {
    this.settings = settings;
    this.teller = teller;
  }

  void rejected(String line, String reason, long nanos) {
    latestRejection = "\"%s\" (%s)".formatted(Excerpt.of(line), reason);
    tellRejections(rejections.happened(nanos));
  }

  void tooLong(long nanos) {
    tellOverlongs(overlongs.happened(nanos));
  }

  /** Tells what was held back and has fallen due. */
  void due(long nanos) {
    tellRejections(rejections.due(nanos));
    tellOverlongs(overlongs.due(nanos));
  }

  private void tellRejections(long count) {
    if (count > 0) {
      tell(
          "line-rejected",
          count == 1
              ? "serial port %s sent a line that is not a reading: %s"
                  .formatted(settings.port().port(), latestRejection)
              : "serial port %s sent %d more lines that are not a reading, the latest: %s"
                  .formatted(settings.port().port(), count, latestRejection),
          "Compare it with the key line of the station file; odd characters mean a wrong speed (here: %d baud)"
              .formatted(settings.port().baud()));
    }
  }

  private void tellOverlongs(long count) {
    if (count > 0) {
      tell(
          "line-too-long",
          count == 1
              ? "serial port %s sent a line longer than %d bytes"
                  .formatted(settings.port().port(), LineFraming.LONGEST_LINE_BYTES)
              : "serial port %s sent %d more lines longer than %d bytes"
                  .formatted(settings.port().port(), count, LineFraming.LONGEST_LINE_BYTES),
          "Check the speed (here: %d baud) and that the meter ends its lines with CR or LF"
              .formatted(settings.port().baud()));
    }
  }

  LinkTrouble lost() {
    return new LinkTrouble(
        "port-lost",
        "serial port %s was lost while it was read".formatted(settings.port().port()),
        "Plug the meter in again; reading goes on by itself");
  }

  LinkTrouble back() {
    return new LinkTrouble(
        "port-back", "serial port %s is there and open".formatted(settings.port().port()), "");
  }

  /**
   * @param unfinished whether bytes have come, but no end of a line
   */
  LinkTrouble noData(boolean unfinished) {
    String span = seconds(settings.noDataAfter());
    return unfinished
        ? new LinkTrouble(
            "no-data",
            "serial port %s has sent bytes but no end of a line for %s"
                .formatted(settings.port().port(), span),
            "Check the speed (here: %d baud) and that the meter ends its lines with CR or LF"
                .formatted(settings.port().baud()))
        : new LinkTrouble(
            "no-data",
            "serial port %s has sent nothing for %s".formatted(settings.port().port(), span),
            settings.poll().isPresent()
                ? "Check that the meter is on, the cable, the speed (here: %d baud) and the poll (here: \"%s\")"
                    .formatted(settings.port().baud(), Excerpt.of(settings.poll().get()))
                : "Check that the meter is on and set to send, the cable, and the speed (here: %d baud)"
                    .formatted(settings.port().baud()));
  }

  LinkTrouble dataBack() {
    return new LinkTrouble(
        "data-back", "serial port %s sends again".formatted(settings.port().port()), "");
  }

  private void tell(String code, String text, String remedy) {
    teller.accept(new LinkTrouble(code, text, remedy));
  }

  private static String seconds(Duration span) {
    return BigDecimal.valueOf(span.toMillis(), 3).stripTrailingZeros().toPlainString() + " s";
  }
}
