package org.restpoint.config.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;

/** Reads the pattern that picks a reading out of a serial line. */
final class LinePattern {

  /** Long enough for any line of a meter, short enough for the compiler's recursion. */
  private static final int LONGEST = 1000;

  private static final Pattern GROUP = Pattern.compile("\\(\\?<([a-zA-Z][a-zA-Z0-9]*)>");

  private LinePattern() {}

  /**
   * Reads a pattern.
   *
   * @param groups the named groups of which it must have one; the first is told as an example
   */
  static Optional<Pattern> read(Entry entry, List<String> groups) {
    String group = groups.get(0);
    String expected =
        "a pattern with the named group %s, e.g. (?<%s>[-+.\\d]+)".formatted(group, group);
    Optional<String> text = entry.text(expected);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    if (text.get().length() > LONGEST) {
      entry.refuse("a pattern of at most " + LONGEST + " characters");
      return Optional.empty();
    }
    try {
      Pattern pattern = Pattern.compile(text.get());
      if (!groups(pattern, groups).isEmpty()) {
        return Optional.of(pattern);
      }
      entry.refuse(expected, foundGroups(text.get()));
    } catch (PatternSyntaxException e) {
      String fault =
          e.getDescription() + (e.getIndex() < 0 ? "" : " at character " + (e.getIndex() + 1));
      entry.refuse(expected, entry.found() + ", which is no pattern: " + Wording.shown(fault));
    }
    return Optional.empty();
  }

  /** Those of the groups that a pattern which was compiled without flags has. */
  static List<String> groups(Pattern pattern, List<String> groups) {
    return groups.stream().filter(group -> hasGroup(pattern, group)).toList();
  }

  private static boolean hasGroup(Pattern pattern, String group) {
    // Matches nothing at all by its empty first branch, and keeps every group of the pattern.
    Matcher matcher = Pattern.compile("|" + pattern.pattern()).matcher("");
    matcher.matches();
    try {
      matcher.start(group);
      return true;
    } catch (IllegalArgumentException e) {
      // The only way Java 17 tells that there is no such group.
      return false;
    }
  }

  private static String foundGroups(String pattern) {
    List<String> groups = new ArrayList<>();
    Matcher matcher = GROUP.matcher(pattern);
    while (matcher.find()) {
      groups.add(Wording.shown(matcher.group(1)));
    }
    return groups.isEmpty()
        ? "a pattern without named groups"
        : "a pattern with " + (groups.size() == 1 ? "only " : "") + Wording.row(groups, "and");
  }
}
