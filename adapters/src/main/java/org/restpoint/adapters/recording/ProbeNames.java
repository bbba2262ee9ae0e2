package org.restpoint.adapters.recording;

import java.util.ArrayList;
import java.util.List;

/** Names of probes, kept so that one is not made anew for each row. */
final class ProbeNames {

  /** More than a station has probes. */
  private static final int KEPT = 64;

  private final List<String> names = new ArrayList<>();
  private String last = "";

  /** The name that these characters are. */
  String of(char[] text, int from, int to) {
    if (is(last, text, from, to)) {
      return last;
    }
    for (String known : names) {
      if (is(known, text, from, to)) {
        last = known;
        return known;
      }
    }
    last = new String(text, from, to - from);
    if (names.size() < KEPT) {
      names.add(last);
    }
    return last;
  }

  /** Whether a word is what these characters are; no empty one is. */
  static boolean is(String word, char[] text, int from, int to) {
    if (word.length() != to - from || from == to) {
      return false;
    }
    for (int i = 0; i < word.length(); i++) {
      if (word.charAt(i) != text[from + i]) {
        return false;
      }
    }
    return true;
  }
}
