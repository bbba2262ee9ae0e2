package org.restpoint.adapters.line;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * Cuts bytes into lines. However the bytes are chunked, the lines are the same.
 *
 * <ul>
 *   <li>A line ends at its {@link LineEnd}; an empty line is nothing and is passed over.
 *   <li>A line longer than {@link #LONGEST_LINE_BYTES} is told once, as soon as it is too long, and
 *       skipped to the next mark.
 *   <li>Half a line is kept until its mark comes, or until {@link #reset()} or {@link #cutOff}.
 *   <li>Half a record of fixed length is given up at a {@link #pause}.
 *   <li>A mark in UTF-16 is known wherever it stands: a byte that was lost costs one line. In
 *       return a mark is also seen across two characters that no meter sends side by side.
 *   <li>A line whose bytes are not of the encoding is told as broken.
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
     * @param line without its mark, never empty
     */
    void line(String line);

    /**
     * What was to be a line and is none.
     *
     * @param bytes what came, one character a byte
     * @param reason why it is none, a clause without a full stop
     */
    void broken(String bytes, String reason);

    /** A line that is longer than {@link #LONGEST_LINE_BYTES}; told once for each such line. */
    void tooLong();
  }

  private final LineEncoding encoding;

  /** The marks, all of one length; none for records of a fixed length. */
  private final List<byte[]> marks;

  private final int markBytes;
  private final int width;
  private final byte[] held;
  private int length;
  private boolean skipping;

  /** A framing that begins at the beginning of a line. */
  public LineFraming(LineEnd end, LineEncoding encoding) {
    this.encoding = encoding;
    if (end instanceof LineEnd.Width records) {
      this.marks = List.of();
      this.markBytes = 0;
      this.width = records.bytes();
    } else {
      this.marks =
          end instanceof LineEnd.Mark mark
              ? List.of(encoding.bytes(mark.characters()))
              : List.of(encoding.bytes("\r"), encoding.bytes("\n"));
      this.markBytes = marks.get(0).length;
      this.width = 0;
    }
    this.held = new byte[LONGEST_LINE_BYTES + markBytes];
  }

  /**
   * Takes the next bytes.
   *
   * @param bytes where they are
   * @param count how many of them, from the first, count
   * @param lines is told each line that ends in them
   */
  public void accept(byte[] bytes, int count, Lines lines) {
    for (int i = 0; i < count; i++) {
      if (width == 0) {
        takeOfLine(bytes[i], lines);
      } else if (!skipping) {
        takeOfRecord(bytes[i], lines);
      }
    }
  }

  private void takeOfRecord(byte next, Lines lines) {
    held[length++] = next;
    if (length == width) {
      length = 0;
      tell(width, lines);
    }
  }

  private void takeOfLine(byte next, Lines lines) {
    if (skipping && length == markBytes) {
      keepTheLast(markBytes - 1);
    }
    held[length++] = next;
    if (endsInMark()) {
      int ended = skipping ? 0 : length - markBytes;
      reset();
      if (ended > 0) {
        tell(ended, lines);
      }
    } else if (length == held.length) {
      // Whatever comes next, the line is longer than the longest; the mark may have begun.
      keepTheLast(markBytes - 1);
      skipping = true;
      lines.tooLong();
    }
  }

  private void keepTheLast(int count) {
    System.arraycopy(held, length - count, held, 0, count);
    length = count;
  }

  private boolean endsInMark() {
    for (byte[] mark : marks) {
      int at = 0;
      while (at < markBytes && length >= markBytes && held[length - markBytes + at] == mark[at]) {
        at++;
      }
      if (at == markBytes) {
        return true;
      }
    }
    return false;
  }

  private void tell(int count, Lines lines) {
    Optional<String> line = encoding.text(held, count);
    if (line.isPresent()) {
      lines.line(line.get());
    } else {
      lines.broken(shown(count), "its bytes are not " + encoding.shown());
    }
  }

  private String shown(int count) {
    return new String(held, 0, count, StandardCharsets.ISO_8859_1);
  }

  /** A moment without a byte has passed, long enough to stand between two records. */
  public void pause(Lines lines) {
    if (width > 0) {
      giveUp("a pause came after %d of its %d bytes".formatted(length, width), lines);
    }
  }

  /** No byte will follow; half a line that is held is told as broken and forgotten. */
  public void cutOff(Lines lines) {
    giveUp("it was cut off", lines);
  }

  private void giveUp(String reason, Lines lines) {
    int given = heldBytes();
    reset();
    if (given > 0) {
      lines.broken(shown(given), reason);
    }
  }

  /** How many bytes of an unfinished line are held. */
  public int heldBytes() {
    return skipping ? 0 : length;
  }

  /** Forgets an unfinished line; the next byte begins a line. */
  public void reset() {
    length = 0;
    skipping = false;
  }

  /**
   * Forgets an unfinished line and passes over what comes before the next mark, or for records of a
   * fixed length before the next pause: for joining a stream whose beginning was not seen.
   */
  public void skip() {
    length = 0;
    skipping = true;
  }

  /** Whether bytes are being passed over up to the next mark. */
  public boolean skipping() {
    return skipping;
  }
}
