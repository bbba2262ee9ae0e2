package org.restpoint.adapters.line;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** How a device writes characters as bytes. */
public enum LineEncoding {
  /** ISO 8859-1, and so ASCII: each byte is one character, so no byte can fail to be read. */
  LATIN_1("Latin-1", StandardCharsets.ISO_8859_1),
  /** UTF-8. */
  UTF_8("UTF-8", StandardCharsets.UTF_8),
  /** UTF-16, the low byte first. */
  UTF_16LE("UTF-16LE", StandardCharsets.UTF_16LE),
  /** UTF-16, the high byte first. */
  UTF_16BE("UTF-16BE", StandardCharsets.UTF_16BE);

  private final String shown;
  private final Charset charset;

  LineEncoding(String shown, Charset charset) {
    this.shown = shown;
    this.charset = charset;
  }

  /** Its name, for messages. */
  String shown() {
    return shown;
  }

  /** The text as bytes. */
  public byte[] bytes(String text) {
    return text.getBytes(charset);
  }

  /** The first bytes as text; empty where they are not of this encoding. */
  Optional<String> text(byte[] bytes, int count) {
    try {
      return Optional.of(charset.newDecoder().decode(ByteBuffer.wrap(bytes, 0, count)).toString());
    } catch (CharacterCodingException e) {
      // The answer says it: what came is not of this encoding.
      return Optional.empty();
    }
  }
}
