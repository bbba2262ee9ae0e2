package org.restpoint.acquisition.demo;

import java.util.regex.Pattern;

/** Words as a POSIX shell takes them. */
public final class Shell {

  private static final Pattern PLAIN = Pattern.compile("[A-Za-z0-9_./:=+@%-]+");

  private Shell() {}

  /** A word, in quotes where it needs them. */
  public static String quoted(String word) {
    return PLAIN.matcher(word).matches() ? word : "'" + word.replace("'", "'\\''") + "'";
  }
}
