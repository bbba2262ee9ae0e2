package org.restpoint.config.file;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.LineFormat;
import org.restpoint.config.station.LineFormat.Checksum;
import org.restpoint.config.station.LineFormat.Encoding;
import org.restpoint.config.station.LineFormat.End;

/** Reads how the bytes of a serial port become lines. */
final class LineFormatReader {

  /** The keys of a line's format. */
  static final List<String> KEYS = List.of("terminator", "width", "encoding", "checksum");

  private static final String CR_OR_LF = "cr-or-lf";
  private static final String A_TERMINATOR =
      CR_OR_LF + ", or 1 to 8 ASCII characters, e.g. \"\\x03\"";
  private static final int LONGEST_TERMINATOR = 8;
  private static final int MOST_BYTES = 1024;

  private LineFormatReader() {}

  static LineFormat read(Section keys) {
    Optional<End> width =
        keys.find("width")
            .flatMap(entry -> entry.whole(1, MOST_BYTES))
            .map(bytes -> new End.Width(bytes.intValue()));
    Optional<End> terminator = keys.find("terminator").flatMap(LineFormatReader::terminator);
    if (keys.has("width")) {
      keys.find("terminator")
          .ifPresent(entry -> entry.refuse("no terminator, as width says where a line ends"));
    }
    return new LineFormat(
        width.or(() -> terminator).orElseGet(End.CrOrLf::new),
        SerialPortReader.word(keys, "encoding", Encoding.values(), Encoding.LATIN_1),
        SerialPortReader.word(keys, "checksum", Checksum.values(), Checksum.NONE));
  }

  private static Optional<End> terminator(Entry entry) {
    Optional<String> text = entry.freeText(A_TERMINATOR);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    if (text.get().equals(CR_OR_LF)) {
      return Optional.of(new End.CrOrLf());
    }
    boolean fits = StandardCharsets.US_ASCII.newEncoder().canEncode(text.get());
    if (!fits || text.get().isEmpty() || text.get().length() > LONGEST_TERMINATOR) {
      entry.refuse(A_TERMINATOR);
      return Optional.empty();
    }
    return Optional.of(new End.Terminator(text.get()));
  }
}
