package org.restpoint.adapters.sdi12;

import java.util.ArrayDeque;
import java.util.Deque;
import org.restpoint.adapters.bus.Turn;

/** What comes over the wire after a command: lines, without the command's echo. */
final class Hearing {

  private static final int READ_BYTES = 256;

  private final Turn turn;
  private final AnswerFraming framing = new AnswerFraming();
  private final Deque<String> lines = new ArrayDeque<>();
  private final byte[] bytes = new byte[READ_BYTES];
  private String echo;

  /**
   * @param echo what a converter may send back before anything else; once
   */
  Hearing(Turn turn, String echo) {
    this.turn = turn;
    this.echo = echo;
  }

  /** What was heard. */
  sealed interface Heard {

    /**
     * A line with something in it.
     *
     * @param text without its end
     */
    record Line(String text) implements Heard {}

    /** Nothing more in time. */
    record Nothing() implements Heard {}

    /** The wire is gone. */
    record Gone() implements Heard {}
  }

  /** Waits for a line, until a time of the turn's clock or the turn's end. */
  Heard next(long untilNanos) {
    while (true) {
      while (!lines.isEmpty()) {
        String line = withoutEcho(lines.remove());
        if (!line.isEmpty()) {
          return new Heard.Line(line);
        }
      }
      if (turn.isOver() || turn.nanos() - untilNanos >= 0) {
        return new Heard.Nothing();
      }
      int count = turn.wire().read(bytes);
      if (count < 0) {
        return new Heard.Gone();
      }
      lines.addAll(framing.lines(bytes, count));
    }
  }

  /** The beginning of a line whose end has not come; empty where nothing has. */
  String half() {
    return withoutEcho(framing.half());
  }

  private String withoutEcho(String line) {
    boolean echoed = !echo.isEmpty() && line.startsWith(echo);
    String rest = echoed ? line.substring(echo.length()) : line;
    echo = "";
    return rest;
  }
}
