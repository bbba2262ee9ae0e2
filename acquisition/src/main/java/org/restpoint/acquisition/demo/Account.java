package org.restpoint.acquisition.demo;

import java.io.PrintWriter;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** The account on the terminal: plain lines, wrapped, with the time at the bench before them. */
final class Account {

  private static final int WIDTH = 96;
  private static final String MARGIN = "       ";

  private final PrintWriter out;
  private final Instant start;

  /**
   * An account.
   *
   * @param out where it goes; each line at once
   * @param start the time shown as 00:00
   */
  Account(PrintWriter out, Instant start) {
    this.out = out;
    this.start = start;
  }

  /** A line as it is. */
  void line(String text) {
    out.println(text);
    out.flush();
  }

  /** The heading of a part of the story. */
  void heading(String text) {
    line("");
    line(text);
  }

  /** A sentence that begins at the left. */
  void say(String text) {
    lines(text, WIDTH).forEach(this::line);
  }

  /** What belongs to the line before it. */
  void below(String text) {
    lines(text, WIDTH - MARGIN.length()).forEach(line -> line(MARGIN + line));
  }

  /** What happened at a time, minutes and seconds before it. */
  void at(Instant time, String text) {
    long seconds = Math.max(0, Duration.between(start, time).toSeconds());
    String before = "%02d:%02d  ".formatted(seconds / 60, seconds % 60);
    for (String line : lines(text, WIDTH - MARGIN.length())) {
      line(before + line);
      before = MARGIN;
    }
  }

  private static List<String> lines(String text, int width) {
    if (text.length() <= width) {
      return List.of(text);
    }
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ", -1)) {
      if (line.length() > 0 && line.length() + 1 + word.length() > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      if (line.length() > 0) {
        line.append(' ');
      }
      line.append(word);
    }
    lines.add(line.toString());
    return lines;
  }
}
