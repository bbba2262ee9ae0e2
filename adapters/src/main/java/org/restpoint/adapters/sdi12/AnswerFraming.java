package org.restpoint.adapters.sdi12;

import java.util.ArrayList;
import java.util.List;

/**
 * Makes lines of bytes, whichever way they come in pieces. A line ends with CR and LF; a converter
 * that leaves the CR out is understood too. NUL bytes, which is how a break arrives, are left out.
 *
 * <p>A line longer than any answer is cut to {@link #LONGEST} characters and passed on so: it is no
 * answer. Nothing else is kept of it.
 */
final class AnswerFraming {

  /**
   * More than the longest answer with the longest echo before it: a command of 6, an address, 75
   * characters of values and 3 that check them.
   */
  static final int LONGEST = 100;

  private final StringBuilder line = new StringBuilder();

  /** Takes bytes, one character each; the lines that are whole now. */
  List<String> lines(byte[] bytes, int count) {
    List<String> whole = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      char c = (char) (bytes[i] & 0xFF);
      if (c == '\n') {
        whole.add(withoutReturn());
        line.setLength(0);
      } else if (c != 0 && line.length() < LONGEST) {
        line.append(c);
      }
    }
    return whole;
  }

  /** The beginning of a line whose end has not come. */
  String half() {
    return line.toString();
  }

  private String withoutReturn() {
    int last = line.length() - 1;
    boolean ends = last >= 0 && line.charAt(last) == '\r';
    return ends ? line.substring(0, last) : line.toString();
  }
}
