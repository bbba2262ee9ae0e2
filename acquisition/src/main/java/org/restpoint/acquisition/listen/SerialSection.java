package org.restpoint.acquisition.listen;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.restpoint.adapters.guess.LineProposal;
import org.restpoint.adapters.line.DecimalMark;
import org.restpoint.adapters.line.LineChecksum;
import org.restpoint.adapters.line.LineEncoding;
import org.restpoint.adapters.line.LineEnd;
import org.restpoint.adapters.serial.PortSettings.Parity;

/** The section of a station file for a serial line that was understood. */
public final class SerialSection {

  private SerialSection() {}

  /**
   * The section, from {@code probes:} on; a probe for each channel.
   *
   * @param port the port's name in the file
   * @param setting how the port was opened
   * @param ask what the meter was asked, if it was
   */
  public static List<String> of(
      String port, Setting setting, Optional<Ask> ask, LineProposal proposal) {
    List<String> lines = new ArrayList<>();
    lines.add(
        "# %s, %s: %d of %d lines are read by this."
            .formatted(port, setting.text(), proposal.read(), proposal.seen()));
    proposal.doubts().forEach(doubt -> lines.add("# Look at this: %s.".formatted(doubt)));
    lines.add("probes:");
    if (proposal.channels().isEmpty()) {
      lines.addAll(probe("probe-1", port, setting, ask, proposal, Optional.empty()));
    }
    for (String channel : proposal.channels()) {
      String name = "channel-" + channel.replaceAll("[^A-Za-z0-9_-]", "-");
      lines.addAll(probe(name, port, setting, ask, proposal, Optional.of(channel)));
    }
    return lines;
  }

  private static List<String> probe(
      String name,
      String port,
      Setting setting,
      Optional<Ask> ask,
      LineProposal proposal,
      Optional<String> channel) {
    List<String> keys = new ArrayList<>();
    keys.add("port: " + Yaml.text(port));
    keys.add("baud: " + setting.baud());
    if (setting.dataBits() != 8) {
      keys.add("data-bits: " + setting.dataBits());
    }
    if (setting.parity() != Parity.NONE) {
      keys.add("parity: " + setting.parity().name().toLowerCase(Locale.ROOT));
    }
    end(proposal.format().end()).ifPresent(keys::add);
    if (proposal.format().encoding() != LineEncoding.LATIN_1) {
      keys.add("encoding: " + encoding(proposal.format().encoding()));
    }
    checksum(proposal.format().checksum()).ifPresent(kind -> keys.add("checksum: " + kind));
    keys.add("line: " + Yaml.single(proposal.pattern()));
    keys.addAll(NumberKeys.of(proposal.meaning()));
    if (proposal.decimal() == DecimalMark.COMMA) {
      keys.add("decimal: comma");
    }
    channel.ifPresent(text -> keys.add("channel: " + Yaml.escaped(text)));
    ask.ifPresent(
        what -> {
          keys.add("poll: " + Yaml.escaped(what.text()));
          keys.add("every: " + span(what.every()));
        });
    return ProbeText.of(name, proposal.meaning(), "serial", keys);
  }

  private static Optional<String> end(LineEnd end) {
    if (end instanceof LineEnd.Mark mark) {
      return Optional.of("terminator: " + Yaml.escaped(mark.characters()));
    }
    return end instanceof LineEnd.Width width
        ? Optional.of("width: " + width.bytes())
        : Optional.empty();
  }

  private static String encoding(LineEncoding encoding) {
    return encoding.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Its key in the station file: the catalogue's name in lower case. */
  static Optional<String> checksum(LineChecksum checksum) {
    if (checksum instanceof LineChecksum.Crc crc) {
      return Optional.of(crc.crc().name().toLowerCase(Locale.ROOT).replace('/', '-'));
    }
    return checksum instanceof LineChecksum.ExclusiveOr ? Optional.of("xor") : Optional.empty();
  }

  private static String span(Duration span) {
    return span.toMillis() % 1000 == 0 ? span.toSeconds() + " s" : span.toMillis() + " ms";
  }
}
