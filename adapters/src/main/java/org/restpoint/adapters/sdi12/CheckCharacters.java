package org.restpoint.adapters.sdi12;

import java.nio.charset.StandardCharsets;
import org.restpoint.adapters.checksum.Crc16;
import org.restpoint.adapters.sdi12.Answer.Malformed;
import org.restpoint.adapters.sdi12.Answer.Understood;
import org.restpoint.adapters.text.Excerpt;

/**
 * The three characters at the end of an answer by which it is known to have come whole (section
 * 4.4.12): the remainder r of CRC-16/ARC over everything before them, the address included, in
 * parts of 4, 6 and 6 bits, each with 0x40 added so that it can be printed:
 *
 * <p>{@code 0x40 | (r >> 12)}, {@code 0x40 | ((r >> 6) & 0x3F)}, {@code 0x40 | (r & 0x3F)}
 */
final class CheckCharacters {

  /** How many they are. */
  static final int COUNT = 3;

  private static final int PRINTABLE = 0x40;
  private static final int SIX_BITS = 0x3F;

  private CheckCharacters() {}

  /** The characters for a text of ASCII. */
  static String of(String text) {
    int remainder = Crc16.ARC.of(text.getBytes(StandardCharsets.ISO_8859_1));
    return ""
        + (char) (PRINTABLE | (remainder >> 12))
        + (char) (PRINTABLE | ((remainder >> 6) & SIX_BITS))
        + (char) (PRINTABLE | (remainder & SIX_BITS));
  }

  /** The answer without its characters, which are right. */
  static Answer<String> checked(String line) {
    if (line.length() <= COUNT) {
      return new Malformed<>(
          "\"%s\" is too short to have its three check characters".formatted(Excerpt.of(line)));
    }
    String text = line.substring(0, line.length() - COUNT);
    if (!line.equals(text + of(text))) {
      return new Malformed<>(
          "the check characters of \"%s\" do not fit".formatted(Excerpt.of(line)));
    }
    return new Understood<>(text);
  }
}
