package org.restpoint.adapters.recording;

import java.nio.CharBuffer;

/**
 * Cuts a growing text into lines, ended by LF, CR or both; half a line is kept until its end comes.
 * A line of more than {@link RecordingText#LONGEST_ROW} characters is told as too long once and
 * passed over to its end.
 */
final class RowFraming {

  /** Takes lines. */
  interface Lines {

    /** A line, counted from 1, without its end. */
    void line(String text, long number);

    /** A line is too long. */
    void tooLong(long number);
  }

  private final StringBuilder begun = new StringBuilder();
  private long number = 1;
  private boolean skipping;
  private boolean afterReturn;

  /** Takes the next letters. */
  void accept(CharBuffer letters, Lines lines) {
    while (letters.hasRemaining()) {
      char letter = letters.get();
      boolean secondHalf = letter == '\n' && afterReturn;
      afterReturn = letter == '\r';
      if (secondHalf) {
        continue;
      }
      if (letter == '\n' || letter == '\r') {
        end(lines);
      } else if (!skipping) {
        add(letter, lines);
      }
    }
  }

  private void add(char letter, Lines lines) {
    if (begun.length() == RecordingText.LONGEST_ROW) {
      begun.setLength(0);
      skipping = true;
      lines.tooLong(number);
    } else {
      begun.append(letter);
    }
  }

  private void end(Lines lines) {
    if (!skipping) {
      lines.line(begun.toString(), number);
    }
    begun.setLength(0);
    skipping = false;
    number++;
  }

  /** Whether a line has begun whose end is yet to come. */
  boolean isBegun() {
    return skipping || !begun.isEmpty();
  }

  /** The line under way, counted from 1. */
  long number() {
    return number;
  }
}
