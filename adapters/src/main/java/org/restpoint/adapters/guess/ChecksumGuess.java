package org.restpoint.adapters.guess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.restpoint.adapters.checksum.Crc16;
import org.restpoint.adapters.line.LineChecksum;
import org.restpoint.adapters.line.LineChecksum.Checked;
import org.restpoint.adapters.line.LineEncoding;

/**
 * Tries all checksums that lines are known to have. One is taken only where nine of ten lines prove
 * themselves by it, since one may be garbled; that three lines do so by chance has odds of 1 to
 * 2^24 at most.
 *
 * @param checksum the checksum
 * @param lines the lines without it
 * @param doubt where the lines look as if they had a checksum that none of the known ones gives
 */
record ChecksumGuess(LineChecksum checksum, List<String> lines, Optional<String> doubt) {

  private static final double SHARE_THAT_PROVES = 0.9;

  private static final List<LineChecksum> KNOWN =
      List.of(
          new LineChecksum.ExclusiveOr(),
          new LineChecksum.Crc(Crc16.MODBUS),
          new LineChecksum.Crc(Crc16.ARC),
          new LineChecksum.Crc(Crc16.IBM_3740),
          new LineChecksum.Crc(Crc16.XMODEM),
          new LineChecksum.Crc(Crc16.KERMIT));

  static ChecksumGuess of(List<String> lines, LineEncoding encoding) {
    for (LineChecksum checksum : KNOWN) {
      List<String> sound = new ArrayList<>();
      for (String line : lines) {
        if (checksum.checked(line, encoding) instanceof Checked.Sound whole) {
          sound.add(whole.line());
        }
      }
      if (!sound.isEmpty() && sound.size() >= SHARE_THAT_PROVES * lines.size()) {
        return new ChecksumGuess(checksum, List.copyOf(sound), Optional.empty());
      }
    }
    boolean looksSo =
        !lines.isEmpty()
            && lines.stream().allMatch(line -> line.matches("(?s).*\\*\\p{XDigit}{2,4}\\s*"));
    return new ChecksumGuess(
        LineChecksum.NONE,
        lines,
        looksSo
            ? Optional.of(
                "the lines end as if in a checksum, and none of the known ones gives it: it is not checked")
            : Optional.empty());
  }
}
