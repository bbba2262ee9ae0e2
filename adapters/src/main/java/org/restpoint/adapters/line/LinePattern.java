package org.restpoint.adapters.line;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads a line by a pattern with the named group {@code millivolts} and, where the line carries a
 * temperature, {@code celsius}. The whole line must match, as it stands or without the white space
 * around it.
 *
 * <p>A matching that takes more than {@link StepBudget#MOST_STEPS} looks at characters is given up
 * and the line rejected: a pattern with nested repetitions must not hold up the readings.
 */
public final class LinePattern {

  /**
   * The largest potential believed, in mV either way: five times the ±2 V that the input of an
   * electrode meter spans at most, so it only catches what was never a potential.
   */
  public static final double MOST_MILLIVOLTS = 10_000;

  /** The lowest temperature believed, in °C: below it no sample is liquid. */
  public static final double LEAST_CELSIUS = -30;

  /** The highest temperature believed, in °C: above it no electrode is used. */
  public static final double MOST_CELSIUS = 130;

  private static final String MILLIVOLTS = "millivolts";
  private static final String CELSIUS = "celsius";

  /** A decimal number; narrower than {@link Double#parseDouble}, which also takes NaN and hex. */
  private static final Pattern NUMBER =
      Pattern.compile("[-+]?(?:\\d++\\.?+\\d*+|\\.\\d++)(?:[eE][-+]?\\d++)?");

  private final Pattern pattern;
  private final boolean hasCelsius;

  /**
   * @throws IllegalArgumentException when the pattern has no group named {@code millivolts}
   */
  public LinePattern(Pattern pattern) {
    if (!hasGroup(pattern, MILLIVOLTS)) {
      throw new IllegalArgumentException(
          "the pattern '%s' has no group named millivolts: write (?<millivolts>...) around the number"
              .formatted(pattern.pattern()));
    }
    this.pattern = pattern;
    this.hasCelsius = hasGroup(pattern, CELSIUS);
  }

  /** Whether the pattern takes a temperature from the line. */
  public boolean hasCelsius() {
    return hasCelsius;
  }

  /** Reads one line without its terminator. */
  public ParsedLine parse(String line) {
    try {
      Matcher matcher = pattern.matcher(new StepBudget(line));
      if (!matcher.matches()) {
        matcher = pattern.matcher(new StepBudget(line.strip()));
        if (!matcher.matches()) {
          return new ParsedLine.Rejected("it does not match the pattern");
        }
      }
      return values(matcher.group(MILLIVOLTS), hasCelsius ? matcher.group(CELSIUS) : null);
    } catch (StepBudget.Spent | StackOverflowError e) {
      return new ParsedLine.Rejected("the pattern takes too long to match it");
    }
  }

  private static ParsedLine values(@Nullable String millivoltsText, @Nullable String celsiusText) {
    if (millivoltsText == null) {
      return new ParsedLine.Rejected("the group millivolts took no part in the match");
    }
    OptionalDouble millivolts = number(millivoltsText);
    if (millivolts.isEmpty()) {
      return notANumber(MILLIVOLTS, millivoltsText);
    }
    double potential = millivolts.getAsDouble();
    if (!(Math.abs(potential) <= MOST_MILLIVOLTS)) {
      return new ParsedLine.Rejected(
          String.format(
              Locale.ROOT,
              "%s mV is outside %.0f to %.0f mV",
              Excerpt.of(millivoltsText),
              -MOST_MILLIVOLTS,
              MOST_MILLIVOLTS));
    }
    if (celsiusText == null) {
      return new ParsedLine.Values(potential, OptionalDouble.empty());
    }
    OptionalDouble celsius = number(celsiusText);
    if (celsius.isEmpty()) {
      return notANumber(CELSIUS, celsiusText);
    }
    double temperature = celsius.getAsDouble();
    if (!(temperature >= LEAST_CELSIUS && temperature <= MOST_CELSIUS)) {
      return new ParsedLine.Rejected(
          String.format(
              Locale.ROOT,
              "%s Cel is outside %.0f to %.0f Cel",
              Excerpt.of(celsiusText),
              LEAST_CELSIUS,
              MOST_CELSIUS));
    }
    return new ParsedLine.Values(potential, celsius);
  }

  private static OptionalDouble number(String text) {
    String bare = text.strip();
    return NUMBER.matcher(bare).matches()
        ? OptionalDouble.of(Double.parseDouble(bare))
        : OptionalDouble.empty();
  }

  private static ParsedLine.Rejected notANumber(String group, String text) {
    String hint = text.indexOf(',') >= 0 ? ": a decimal point is expected" : "";
    return new ParsedLine.Rejected(
        "%s is \"%s\", which is not a number%s".formatted(group, Excerpt.of(text), hint));
  }

  /** With an empty alternative in front the pattern matches nothing, and knows its groups. */
  private static boolean hasGroup(Pattern pattern, String name) {
    Matcher matcher = Pattern.compile("|" + pattern.pattern(), pattern.flags()).matcher("");
    try {
      return matcher.matches() && matcher.start(name) < 0;
    } catch (IllegalArgumentException unknownName) {
      return false;
    }
  }
}
