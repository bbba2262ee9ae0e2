package org.restpoint.adapters.serial;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.HashSet;
import java.util.Set;
import java.util.function.Consumer;
import org.restpoint.adapters.line.LineEnd;
import org.restpoint.adapters.line.LineFraming;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.text.Excerpt;

/** What a serial link tells people about an open port, in words. */
final class SerialNotices {

  /** As many channels as are told of: noise could name ever new ones. */
  private static final int MOST_CHANNELS = 16;

  private final SerialLineSettings line;
  private final SerialSettings settings;
  private final Consumer<LinkTrouble> teller;
  private final RepeatedTrouble rejections;
  private final RepeatedTrouble checksums;
  private final RepeatedTrouble overlongs;
  private final Set<String> unclaimed = new HashSet<>();

  SerialNotices(SerialLineSettings line, SerialSettings settings, Consumer<LinkTrouble> teller) {
    this.line = line;
    this.settings = settings;
    this.teller = teller;
    this.rejections =
        new RepeatedTrouble(
            "line-rejected",
            count ->
                count == 1
                    ? line.name() + " sent a line that is not a reading: "
                    : "%s sent %d more lines that are not a reading, the latest: "
                        .formatted(line.name(), count),
            "Compare it with the key line of the station file; odd characters mean a wrong speed"
                + " (%s)".formatted(speed()),
            teller);
    this.checksums =
        new RepeatedTrouble(
            "checksum-wrong",
            count ->
                count == 1
                    ? line.name() + " sent a line whose checksum is wrong: "
                    : "%s sent %d more lines whose checksum is wrong, the latest: "
                        .formatted(line.name(), count),
            "Where some lines are right it is noise: look at the cable and the ground; where none"
                + " is, the meter sends another checksum than the key checksum says",
            teller);
    this.overlongs =
        new RepeatedTrouble(
            "line-too-long",
            count ->
                count == 1
                    ? "%s sent a line longer than %d bytes"
                        .formatted(line.name(), LineFraming.LONGEST_LINE_BYTES)
                    : "%s sent %d more lines longer than %d bytes"
                        .formatted(line.name(), count, LineFraming.LONGEST_LINE_BYTES),
            lineEnds(),
            teller);
  }

  void rejected(String text, String reason, long nanos) {
    rejections.happened(sample(text, reason), nanos);
  }

  void checksumWrong(String text, String reason, long nanos) {
    checksums.happened(sample(text, reason), nanos);
  }

  private static String sample(String text, String reason) {
    return "\"%s\" (%s)".formatted(Excerpt.of(text), reason);
  }

  void tooLong(long nanos) {
    overlongs.happened("", nanos);
  }

  /** A line of a channel that belongs to no probe: told once for each channel. */
  void unclaimed(String channel) {
    if (unclaimed.size() < MOST_CHANNELS && unclaimed.add(channel)) {
      teller.accept(
          new LinkTrouble(
              "channel-unclaimed",
              "%s sends lines of channel \"%s\", which no probe of the station has"
                  .formatted(line.name(), Excerpt.of(channel)),
              "Give a probe this channel, or leave it: its lines are counted as rejected and not told again"));
    }
  }

  /** Tells what was held back and has fallen due. */
  void due(long nanos) {
    rejections.due(nanos);
    checksums.due(nanos);
    overlongs.due(nanos);
  }

  LinkTrouble lost() {
    return new LinkTrouble(
        "port-lost",
        line.name() + " was lost while it was read",
        "Plug the meter in again; reading goes on by itself");
  }

  LinkTrouble back() {
    return new LinkTrouble("port-back", line.name() + " is there and open", "");
  }

  /**
   * The whole port is silent.
   *
   * @param unfinished whether bytes have come, but no end of a line
   */
  LinkTrouble noData(boolean unfinished) {
    return unfinished
        ? new LinkTrouble(
            "no-data",
            "%s has sent bytes but no end of a line for %s".formatted(line.name(), silence()),
            lineEnds())
        : new LinkTrouble(
            "no-data",
            "%s has sent nothing for %s".formatted(line.name(), silence()),
            settings.poll().isPresent()
                ? "Check that the meter is on, the cable, the speed (%s) and the poll (here: \"%s\")"
                    .formatted(speed(), Excerpt.of(settings.poll().get()))
                : "Check that the meter is on and set to send, the cable, and the speed (%s)"
                    .formatted(speed()));
  }

  /** The port speaks, but not of this probe. */
  LinkTrouble noDataOfProbe() {
    String whose =
        settings
            .channel()
            .map(channel -> "channel \"%s\"".formatted(Excerpt.of(channel)))
            .orElse("this probe");
    return new LinkTrouble(
        "no-data",
        "%s sends lines, but has sent none of %s for %s".formatted(line.name(), whose, silence()),
        "Check that the meter measures there, and the keys channel, line and poll of this probe");
  }

  LinkTrouble dataBack() {
    return new LinkTrouble("data-back", line.name() + " sends again", "");
  }

  private String lineEnds() {
    if (line.format().end() instanceof LineEnd.Width width) {
      return "Check the speed (%s) and that the meter pauses for a tenth of a second between some of its records of %d bytes"
          .formatted(speed(), width.bytes());
    }
    return "Check the speed (%s) and that the meter ends its lines with %s"
        .formatted(
            speed(),
            line.format().end() instanceof LineEnd.Mark mark
                ? "\"%s\"".formatted(Excerpt.of(mark.characters()))
                : "CR or LF");
  }

  private String speed() {
    return "here: %d baud".formatted(line.port().baud());
  }

  private String silence() {
    Duration span = settings.noDataAfter();
    return BigDecimal.valueOf(span.toMillis(), 3).stripTrailingZeros().toPlainString() + " s";
  }
}
