package org.restpoint.acquisition.slip;

import java.lang.Character.UnicodeScript;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Text in columns of one width, as a printer of receipts or a terminal has them. */
final class Columns {

  private static final Set<UnicodeScript> TWO_COLUMNS =
      EnumSet.of(
          UnicodeScript.HAN, UnicodeScript.HIRAGANA, UnicodeScript.KATAKANA, UnicodeScript.HANGUL);

  private Columns() {}

  /** How many columns a text takes: none a combining mark, two a letter of East Asia. */
  static int of(String text) {
    return text.codePoints().map(Columns::of).sum();
  }

  /**
   * The text in lines of at most that many columns, 2 or more, broken at spaces and only where it
   * must be within a word. A no-break space is written as a space; a line is broken there before it
   * is broken within a word.
   */
  static List<String> lines(String text, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : words(text, width)) {
      if (line.length() > 0 && of(line.toString()) + 1 + of(word) > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      if (line.length() > 0) {
        line.append(' ');
      }
      line.append(word);
    }
    lines.add(line.toString());
    return lines.stream().map(done -> done.replace(AmountWords.NO_BREAK, " ")).toList();
  }

  private static List<String> words(String text, int width) {
    List<String> words = new ArrayList<>();
    for (String word : text.split(" ", -1)) {
      if (of(word) <= width) {
        words.add(word);
      } else {
        for (String part : word.split(AmountWords.NO_BREAK, -1)) {
          words.addAll(pieces(part, width));
        }
      }
    }
    return words;
  }

  private static List<String> pieces(String word, int width) {
    List<String> pieces = new ArrayList<>();
    StringBuilder piece = new StringBuilder();
    for (int point : word.codePoints().toArray()) {
      if (of(piece.toString()) + of(point) > width) {
        pieces.add(piece.toString());
        piece.setLength(0);
      }
      piece.appendCodePoint(point);
    }
    pieces.add(piece.toString());
    return pieces;
  }

  private static int of(int point) {
    return switch (Character.getType(point)) {
      case Character.NON_SPACING_MARK, Character.ENCLOSING_MARK, Character.FORMAT -> 0;
      default -> TWO_COLUMNS.contains(UnicodeScript.of(point)) ? 2 : 1;
    };
  }
}
