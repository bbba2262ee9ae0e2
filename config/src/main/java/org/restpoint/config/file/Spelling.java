package org.restpoint.config.file;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/**
 * Finds the word somebody meant.
 *
 * <p>Method: restricted Damerau-Levenshtein distance (insertions, deletions, substitutions and
 * swaps of neighbours each count 1), at most a third of the word's length and at least 1; failing
 * that, a word that begins with the other.
 */
public final class Spelling {

  private static final int LONGEST_COMPARED = 64;
  private static final int SHORTEST_BEGINNING = 3;

  private Spelling() {}

  /** The nearest of the known words, or empty where none is near. */
  public static Optional<String> nearest(String written, Collection<String> known) {
    if (written.isEmpty() || written.length() > LONGEST_COMPARED) {
      return Optional.empty();
    }
    String word = plain(written);
    String best = null;
    int bestDistance = Math.max(1, word.length() / 3) + 1;
    for (String candidate : known) {
      int distance = distance(word, plain(candidate));
      if (distance < bestDistance) {
        best = candidate;
        bestDistance = distance;
      }
    }
    return best != null ? Optional.of(best) : sameBeginning(word, known);
  }

  private static Optional<String> sameBeginning(String word, Collection<String> known) {
    return known.stream()
        .filter(
            candidate -> {
              String other = plain(candidate);
              return Math.min(word.length(), other.length()) >= SHORTEST_BEGINNING
                  && (other.startsWith(word) || word.startsWith(other));
            })
        .findFirst();
  }

  private static String plain(String word) {
    return word.toLowerCase(Locale.ROOT).replace('_', '-').replace(' ', '-');
  }

  private static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      d[i][0] = i;
    }
    for (int j = 0; j <= b.length(); j++) {
      d[0][j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      for (int j = 1; j <= b.length(); j++) {
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        int least = Math.min(d[i - 1][j], d[i][j - 1]) + 1;
        least = Math.min(least, d[i - 1][j - 1] + change);
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          least = Math.min(least, d[i - 2][j - 2] + 1);
        }
        d[i][j] = least;
      }
    }
    return d[a.length()][b.length()];
  }
}
