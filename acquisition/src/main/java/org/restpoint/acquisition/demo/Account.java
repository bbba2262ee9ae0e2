package org.restpoint.acquisition.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.regex.Pattern;

/**
 * The account on the terminal: plain lines of at most 100 columns, with the time at the bench
 * before them. Lines are broken at spaces, not at a no-break space, which is shown as a space.
 */
final class Account {

  /** Shown as a space, and no line is broken there. */
  static final char NO_BREAK = '\u00a0';

  private static final int WIDTH = 100;

  /** A space between a number and its unit. */
  private static final Pattern UNIT =
      Pattern.compile("(?<=\\d) (%|mV|mg/L|\u00b0C|min|s)(?![A-Za-z])");

  private static final String MARGIN = "       ";

  private final Consumer<String> out;
  private Instant start = Instant.EPOCH;
  private boolean atHeading;

  /** An account that goes out line by line. */
  Account(Consumer<String> out) {
    this.out = out;
  }

  /** Says which time is shown as 00:00. */
  void beginAt(Instant time) {
    start = time;
  }

  /** A line as it is. */
  void line(String text) {
    out.accept(text.replace(NO_BREAK, ' '));
    atHeading = false;
  }

  /** The heading of a part of the story. */
  void heading(String text) {
    line("");
    line(text);
    atHeading = true;
  }

  /** Room before the next step, except under a heading. */
  void gap() {
    if (!atHeading) {
      line("");
    }
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
    for (String word : UNIT.matcher(text).replaceAll(NO_BREAK + "$1").split(" ", -1)) {
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
