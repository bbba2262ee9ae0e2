package org.restpoint.adapters.line;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.Parsed;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;
import org.restpoint.adapters.text.Excerpt;

/**
 * Reads a line by a pattern whose named groups are the numbers of a {@link Meaning}, such as {@code
 * millivolts} and {@code celsius}, and {@code channel} where several probes speak on one line. The
 * whole line must match, as it stands or without the white space around it. A group that takes no
 * part in a match is a number that did not come.
 *
 * <p>A matching that takes more than {@link StepBudget#MOST_STEPS} looks at characters is given up
 * and the line not read: a pattern with nested repetitions must not hold up the readings.
 */
public final class LinePattern {

  private static final String CHANNEL = "channel";

  private final Pattern pattern;
  private final Meaning meaning;
  private final DecimalMark mark;
  private final Optional<String> channel;
  private final Optional<String> potential;
  private final Optional<String> temperature;

  /**
   * @param mark what stands before the decimals of its numbers
   * @param channel what the group {@code channel} holds in a line of this probe; empty where every
   *     line that matches is its own
   * @throws IllegalArgumentException when the pattern lacks a group that the meaning names, or the
   *     group of the channel
   */
  public LinePattern(Pattern pattern, Meaning meaning, DecimalMark mark, Optional<String> channel) {
    this.pattern = pattern;
    this.meaning = meaning;
    this.mark = mark;
    this.channel = channel;
    this.potential = meaning.potential().map(PotentialScale::name);
    this.temperature = meaning.temperature().map(TemperatureScale::name);
    potential.ifPresent(name -> requireGroup(name, "the number"));
    temperature.ifPresent(name -> requireGroup(name, "the number"));
    channel.ifPresent(any -> requireGroup(CHANNEL, "it"));
  }

  private void requireGroup(String name, String what) {
    if (!hasGroup(pattern, name)) {
      throw new IllegalArgumentException(
          "the pattern '%s' has no group named %s: write (?<%s>...) around %s"
              .formatted(pattern.pattern(), name, name, what));
    }
  }

  /** Reads one line without its terminator and checksum. */
  public LineReading read(String line) {
    try {
      Matcher matcher = pattern.matcher(new StepBudget(line));
      if (!matcher.matches()) {
        matcher = pattern.matcher(new StepBudget(line.strip()));
        if (!matcher.matches()) {
          return new LineReading.Unread("it does not match the pattern");
        }
      }
      return read(matcher);
    } catch (StepBudget.Spent | StackOverflowError e) {
      return new LineReading.Unread("the pattern takes too long to match it");
    }
  }

  private LineReading read(Matcher matcher) {
    if (channel.isPresent()) {
      String found = matcher.group(CHANNEL);
      if (found == null) {
        return new LineReading.Unread("it names no channel");
      }
      if (!found.strip().equals(channel.get())) {
        return new LineReading.OfChannel(found.strip());
      }
    }
    try {
      return new LineReading.Own(
          meaning.parsed(number(matcher, potential), number(matcher, temperature)));
    } catch (NotANumber e) {
      return new LineReading.Own(new Parsed.Rejected(String.valueOf(e.getMessage())));
    }
  }

  private OptionalDouble number(Matcher matcher, Optional<String> group) throws NotANumber {
    String text = group.map(matcher::group).orElse(null);
    if (group.isEmpty() || text == null) {
      return OptionalDouble.empty();
    }
    OptionalDouble number = mark.number(text);
    if (number.isEmpty()) {
      throw new NotANumber(group.get(), text, mark.hint(text));
    }
    return number;
  }

  /** A group holds something else than a number. Carries no stack trace: it is an answer. */
  private static final class NotANumber extends Exception {
    private static final long serialVersionUID = 1L;

    NotANumber(String group, String text, String hint) {
      super(
          "%s is \"%s\", which is not a number%s".formatted(group, Excerpt.of(text), hint),
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
