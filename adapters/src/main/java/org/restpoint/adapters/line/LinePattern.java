package org.restpoint.adapters.line;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.restpoint.adapters.text.DecimalNumber;

/**
 * Reads a line by a pattern with the named group {@code millivolts}, {@code celsius}, or both. The
 * whole line must match, as it stands or without the white space around it.
 *
 * <ul>
 *   <li>A pattern with {@code millivolts} gives potentials; its {@code celsius} may take no part in
 *       a match, and the reading then has no temperature.
 *   <li>A pattern with {@code celsius} alone is a thermometer's.
 * </ul>
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

  private static final BelievedRange MILLIVOLTS =
      new BelievedRange("millivolts", "mV", -MOST_MILLIVOLTS, MOST_MILLIVOLTS);
  private static final BelievedRange CELSIUS =
      new BelievedRange("celsius", "Cel", LEAST_CELSIUS, MOST_CELSIUS);

  private final Pattern pattern;
  private final boolean hasMillivolts;
  private final boolean hasCelsius;

  /**
   * @throws IllegalArgumentException when the pattern has neither a group named {@code millivolts}
   *     nor one named {@code celsius}
   */
  public LinePattern(Pattern pattern) {
    this.pattern = pattern;
    this.hasMillivolts = hasGroup(pattern, MILLIVOLTS.group());
    this.hasCelsius = hasGroup(pattern, CELSIUS.group());
    if (!hasMillivolts && !hasCelsius) {
      throw new IllegalArgumentException(
          ("the pattern '%s' has no group named millivolts or celsius:"
                  + " write (?<millivolts>...) or (?<celsius>...) around the number")
              .formatted(pattern.pattern()));
    }
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
      return values(
          hasMillivolts ? Optional.ofNullable(matcher.group(MILLIVOLTS.group())) : Optional.empty(),
          hasCelsius ? Optional.ofNullable(matcher.group(CELSIUS.group())) : Optional.empty());
    } catch (StepBudget.Spent | StackOverflowError e) {
      return new ParsedLine.Rejected("the pattern takes too long to match it");
    }
  }

  private ParsedLine values(Optional<String> millivolts, Optional<String> celsius) {
    if ((hasMillivolts ? millivolts : celsius).isEmpty()) {
      return new ParsedLine.Rejected(
          "the group %s took no part in the match"
              .formatted((hasMillivolts ? MILLIVOLTS : CELSIUS).group()));
    }
    return millivolts
        .flatMap(MILLIVOLTS::fault)
        .or(() -> celsius.flatMap(CELSIUS::fault))
        .<ParsedLine>map(ParsedLine.Rejected::new)
        .orElseGet(() -> new ParsedLine.Values(number(millivolts), number(celsius)));
  }

  private static OptionalDouble number(Optional<String> text) {
    return text.map(DecimalNumber::in).orElseGet(OptionalDouble::empty);
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
