package org.restpoint.adapters.line;

import java.nio.charset.StandardCharsets;

/**
 * Cuts bytes into lines. However the bytes are chunked, the lines are the same.
 *
 * <ul>
 *   <li>A line ends at CR, LF or CR LF; an empty line is nothing and is passed over.
 *   <li>A line longer than {@link #LONGEST_LINE_BYTES} is told once, as soon as it is too long, and
 *       skipped to the next terminator.
 *   <li>Half a line is kept until its terminator comes, or until {@link #reset()}.
 *   <li>Each byte becomes one character (ISO 8859-1), so no byte can fail to decode.
 * </ul>
 *
 * <p>Not safe for several threads.
 */
public final class LineFraming {

  /** The longest line taken, in bytes; a meter's line has some tens. */
  public static final int LONGEST_LINE_BYTES = 1024;

  /** Whom the lines are told to, in the order they came. */
  public interface Lines {

    /**
     * A whole line.
     *
     * @param line without its terminator, never empty
     */
    void line(String line);

    /** A line that is longer than {@link #LONGEST_LINE_BYTES}; told once for each such line. */
    void tooLong();
  }

  private final byte[] held = new byte[LONGEST_LINE_BYTES];
  private int length;
  private boolean skipping;

  /**
   * Takes the next bytes.
   *
   * @param bytes where they are
   * @param count how many of them, from the first, count
   * @param lines is told each line that ends in them
   */
  public void accept(byte[] bytes, int count, Lines lines) {
    for (int i = 0; i < count; i++) {
      byte next = bytes[i];
      if (next == '\r' || next == '\n') {
        end(lines);
      } else if (!skipping) {
        hold(next, lines);
      }
    }
  }

  private void end(Lines lines) {
    int ended = length;
    reset();
    if (ended > 0) {
      lines.line(new String(held, 0, ended, StandardCharsets.ISO_8859_1));
    }
  }

  private void hold(byte next, Lines lines) {
    if (length < LONGEST_LINE_BYTES) {
      held[length++] = next;
    } else {
      skipToTerminator();
      lines.tooLong();
    }
  }

  /** How many bytes of an unfinished line are held. */
  public int heldBytes() {
    return length;
  }

  /** Forgets an unfinished line; the next byte begins a line. */
  public void reset() {
    length = 0;
    skipping = false;
  }

  /**
   * Forgets an unfinished line and passes over what comes before the next terminator: for joining a
   * stream whose beginning was not seen.
   */
  public void skipToTerminator() {
    length = 0;
    skipping = true;
  }

  /** Whether bytes are being passed over up to the next terminator. */
  public boolean skipping() {
    return skipping;
  }
}
