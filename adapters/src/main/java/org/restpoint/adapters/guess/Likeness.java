package org.restpoint.adapters.guess;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.restpoint.adapters.line.DecimalMark;

/** How much lines look alike, whatever their numbers and words are. */
final class Likeness {

  private Likeness() {}

  /** The share of the lines that look like most of them do, 0 to 1; 0 of no lines. */
  static double of(List<String> lines) {
    Map<String, Integer> looks = new HashMap<>();
    for (String line : lines) {
      looks.merge(Tokens.looks(Tokens.of(line, DecimalMark.POINT)), 1, Integer::sum);
    }
    int most = looks.values().stream().mapToInt(Integer::intValue).max().orElse(0);
    return lines.isEmpty() ? 0 : (double) most / lines.size();
  }
}
