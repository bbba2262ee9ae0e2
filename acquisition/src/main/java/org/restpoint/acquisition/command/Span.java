package org.restpoint.acquisition.command;

import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A span of time as it is typed at the terminal: {@code 20s}, {@code 500ms}, {@code 2min}. */
final class Span implements ITypeConverter<Duration> {

  private static final Pattern TYPED = Pattern.compile("(\\d{1,6}) ?(ms|s|min)");

  @Override
  public Duration convert(String text) {
    Matcher typed = TYPED.matcher(text);
    if (!typed.matches() || Long.parseLong(typed.group(1)) == 0) {
      throw new TypeConversionException("expected a time like 20s, 500ms or 2min; found " + text);
    }
    long number = Long.parseLong(typed.group(1));
    return switch (typed.group(2)) {
      case "ms" -> Duration.ofMillis(number);
      case "s" -> Duration.ofSeconds(number);
      default -> Duration.ofMinutes(number);
    };
  }
}
