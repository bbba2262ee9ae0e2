package org.restpoint.acquisition.log;

import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.IThrowableProxy;
import ch.qos.logback.classic.spi.ThrowableProxyUtil;
import java.util.stream.Collectors;

/**
 * A line for a person: {@code 2026-04-02T14:03:00.123Z INFO message [Logger]}, the level padded to
 * five letters. An exception adds its own message to the line; its stack trace follows only when
 * asked for.
 *
 * <p>Control characters are shown as {@code \n} or {@code \x1b}: text from outside can neither
 * begin a line of its own nor command the terminal.
 *
 * @param traces whether stack traces follow the line
 */
record PlainLayout(boolean traces) implements LineLayout {

  @Override
  public String write(ILoggingEvent event) {
    StringBuilder line = new StringBuilder(160);
    line.append(LineLayout.time(event));
    line.append(" %-5s ".formatted(event.getLevel()));
    line.append(visible(event.getFormattedMessage()));
    IThrowableProxy thrown = event.getThrowableProxy();
    if (thrown != null) {
      line.append(": ").append(visible(words(thrown)));
    }
    line.append(" [").append(shortName(event.getLoggerName())).append(']');
    if (thrown != null && traces) {
      line.append('\n').append(trace(thrown));
    }
    return line.toString();
  }

  private static String words(IThrowableProxy thrown) {
    String message = thrown.getMessage();
    return message == null || message.isBlank() ? shortName(thrown.getClassName()) : message;
  }

  private static String trace(IThrowableProxy thrown) {
    return ThrowableProxyUtil.asString(thrown)
        .lines()
        .map(line -> "    " + visible(line.replace("\t", "  ")))
        .collect(Collectors.joining("\n"));
  }

  private static String shortName(String name) {
    return name.substring(name.lastIndexOf('.') + 1);
  }

  private static String visible(String text) {
    if (text.chars().noneMatch(PlainLayout::isHidden)) {
      return text;
    }
    StringBuilder shown = new StringBuilder(text.length() + 16);
    for (int i = 0; i < text.length(); i++) {
      char letter = text.charAt(i);
      if (!isHidden(letter)) {
        shown.append(letter);
      } else if (letter == '\n') {
        shown.append("\\n");
      } else if (letter == '\r') {
        shown.append("\\r");
      } else if (letter == '\t') {
        shown.append("\\t");
      } else {
        shown.append("\\x%02x".formatted((int) letter));
      }
    }
    return shown.toString();
  }

  /** Control characters and the two Unicode line ends some viewers obey. */
  private static boolean isHidden(int letter) {
    return Character.isISOControl(letter) || letter == 0x2028 || letter == 0x2029;
  }
}
