package org.restpoint.adapters.recording;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import org.jspecify.annotations.Nullable;

/** Makes letters of the bytes of a file in any pieces; bytes that are none become U+FFFD. */
final class LetterDecoder {

  private final Encoding encoding;
  private @Nullable CharsetDecoder decoder;
  private byte[] kept = new byte[0];

  LetterDecoder(Encoding encoding) {
    this.encoding = encoding;
  }

  /** The letters that these bytes complete. */
  CharBuffer letters(ByteBuffer bytes) {
    ByteBuffer all =
        ByteBuffer.allocate(kept.length + bytes.remaining()).put(kept).put(bytes).flip();
    CharsetDecoder open = decoder;
    if (open == null) {
      byte[] head = all.array();
      if (head.length < Encoding.LONGEST_MARK && Encoding.mayBeginMark(head)) {
        kept = head;
        return CharBuffer.allocate(0);
      }
      Encoding.Found found = encoding.of(head);
      all.position(found.markBytes());
      open =
          found
              .charset()
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPLACE)
              .onUnmappableCharacter(CodingErrorAction.REPLACE);
      decoder = open;
    }
    CharBuffer letters =
        CharBuffer.allocate((int) Math.ceil(all.remaining() * (double) open.maxCharsPerByte()) + 1);
    open.decode(all, letters, false);
    kept = new byte[all.remaining()];
    all.get(kept);
    return letters.flip();
  }
}
