package org.restpoint.adapters.recording;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** How letters are kept in a file. */
public enum Encoding {
  /** UTF-8. */
  UTF_8,
  /**
   * UTF-16; without a byte order mark the order is told by where the zero of an ASCII letter is.
   */
  UTF_16,
  /** ISO 8859-1. */
  LATIN_1;

  /** The longest byte order mark. */
  static final int LONGEST_MARK = 4;

  /** The longer ones first: that of UTF-32 begins like that of UTF-16. */
  private static final List<Mark> MARKS =
      List.of(
          new Mark("\u00FF\u00FE\0\0", Charset.forName("UTF-32LE")),
          new Mark("\0\0\u00FE\u00FF", Charset.forName("UTF-32BE")),
          new Mark("\u00EF\u00BB\u00BF", StandardCharsets.UTF_8),
          new Mark("\u00FE\u00FF", StandardCharsets.UTF_16BE),
          new Mark("\u00FF\u00FE", StandardCharsets.UTF_16LE));

  /**
   * How a file is to be read.
   *
   * @param charset its letters
   * @param markBytes how many bytes at its beginning are no text
   */
  record Found(Charset charset, int markBytes) {}

  /** A byte order mark, a character for each byte. */
  private record Mark(String bytes, Charset charset) {

    boolean begins(String head) {
      return head.startsWith(bytes);
    }
  }

  /** How a file with this beginning is to be read; four bytes of it are enough. */
  Found of(byte[] head) {
    int enough = Math.min(head.length, LONGEST_MARK);
    String begin = new String(head, 0, enough, StandardCharsets.ISO_8859_1);
    for (Mark mark : MARKS) {
      if (mark.begins(begin)) {
        return new Found(mark.charset(), mark.bytes().length());
      }
    }
    return new Found(
        switch (this) {
          case UTF_8 -> StandardCharsets.UTF_8;
          case LATIN_1 -> StandardCharsets.ISO_8859_1;
          case UTF_16 ->
              head.length > 0 && head[0] == 0
                  ? StandardCharsets.UTF_16BE
                  : StandardCharsets.UTF_16LE;
        },
        0);
  }

  /** Whether these few bytes may be the beginning of a byte order mark. */
  static boolean mayBeginMark(byte[] head) {
    String begin = new String(head, StandardCharsets.ISO_8859_1);
    return MARKS.stream().anyMatch(mark -> mark.bytes().startsWith(begin));
  }
}
