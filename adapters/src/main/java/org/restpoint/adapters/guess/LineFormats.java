package org.restpoint.adapters.guess;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;

/** Questions about bytes of which nothing is known yet. */
final class LineFormats {

  private LineFormats() {}

  /** Whether most bursts begin with a zero, as they do in UTF-16 with the high byte first. */
  static boolean beginWithZero(List<byte[]> bursts) {
    long zeros = bursts.stream().filter(burst -> burst[0] == 0).count();
    return 2 * zeros > bursts.size();
  }

  /** Whether the bytes can be UTF-8; a character cut in two at either end does not matter. */
  static boolean isUtf8(byte[] bytes) {
    int from = 0;
    while (from < bytes.length && from < 3 && (bytes[from] & 0xC0) == 0x80) {
      from++;
    }
    for (int to = bytes.length; to >= Math.max(from, bytes.length - 3); to--) {
      try {
        StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes, from, to - from));
        return true;
      } catch (CharacterCodingException e) {
        // Shorter by a byte it may be.
      }
    }
    return false;
  }

  /** What stands between the marks; neither what is before the first nor what is after the last. */
  static List<String> pieces(String text, String mark) {
    int first = text.indexOf(mark);
    int last = text.lastIndexOf(mark);
    if (first < 0 || first == last) {
      return List.of();
    }
    return Pattern.compile(mark, Pattern.LITERAL)
        .splitAsStream(text.substring(first + mark.length(), last))
        .filter(piece -> !piece.isBlank())
        .toList();
  }
}
