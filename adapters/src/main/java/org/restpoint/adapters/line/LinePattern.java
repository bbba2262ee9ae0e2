package org.restpoint.adapters.line;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.Parsed;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;
import org.restpoint.adapters.text.DecimalNumber;
import org.restpoint.adapters.text.Excerpt;

/**
 * Reads a line by a pattern whose named groups are the numbers of a {@link Meaning}, such as {@code
 * millivolts} and {@code celsius}. The whole line must match, as it stands or without the white
 * space around it. A group that takes no part in a match is a number that did not come.
 *
 * <p>A matching that takes more than {@link StepBudget#MOST_STEPS} looks at characters is given up
 * and the line rejected: a pattern with nested repetitions must not hold up the readings.
 */
public final class LinePattern {

  private final Pattern pattern;
  private final Meaning meaning;
  private final Optional<String> potential;
  private final Optional<String> temperature;

  /**
   * @throws IllegalArgumentException when the pattern lacks a group that the meaning names
   */
  public LinePattern(Pattern pattern, Meaning meaning) {
    this.pattern = pattern;
    this.meaning = meaning;
    this.potential = meaning.potential().map(PotentialScale::name);
    this.temperature = meaning.temperature().map(TemperatureScale::name);
    potential.ifPresent(this::requireGroup);
    temperature.ifPresent(this::requireGroup);
  }

  private void requireGroup(String name) {
    if (!hasGroup(pattern, name)) {
      throw new IllegalArgumentException(
          "the pattern '%s' has no group named %s: write (?<%s>...) around the number"
              .formatted(pattern.pattern(), name, name));
    }
  }

  /** Reads one line without its terminator. */
  public Parsed parse(String line) {
    try {
      Matcher matcher = pattern.matcher(new StepBudget(line));
      if (!matcher.matches()) {
        matcher = pattern.matcher(new StepBudget(line.strip()));
        if (!matcher.matches()) {
          return new Parsed.Rejected("it does not match the pattern");
        }
      }
      return meaning.parsed(number(matcher, potential), number(matcher, temperature));
    } catch (StepBudget.Spent | StackOverflowError e) {
      return new Parsed.Rejected("the pattern takes too long to match it");
    } catch (NotANumber e) {
      return new Parsed.Rejected(String.valueOf(e.getMessage()));
    }
  }

  private static OptionalDouble number(Matcher matcher, Optional<String> group) throws NotANumber {
    String text = group.map(matcher::group).orElse(null);
    if (group.isEmpty() || text == null) {
      return OptionalDouble.empty();
    }
    OptionalDouble number = DecimalNumber.in(text);
    if (number.isEmpty()) {
      throw new NotANumber(group.get(), text);
    }
    return number;
  }

  /** A group holds something else than a number. Carries no stack trace: it is an answer. */
  private static final class NotANumber extends Exception {
    private static final long serialVersionUID = 1L;

    NotANumber(String group, String text) {
      super(
          "%s is \"%s\", which is not a number%s"
              .formatted(
                  group,
                  Excerpt.of(text),
                  text.indexOf(',') >= 0 ? ": a decimal point is expected" : ""),
          null,
          false,
          false);
    }
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
