package org.restpoint.acquisition.slip;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.restpoint.acquisition.slip.Slip.Fact;
import org.restpoint.acquisition.slip.Slip.Headline;
import org.restpoint.acquisition.slip.Slip.Part;
import org.restpoint.acquisition.slip.Slip.Sentence;

/**
 * A slip as plain text for a roll of paper or a terminal. No line is longer than the width, nothing
 * is cut, and no line ends in a space.
 */
public final class SlipText {

  /** The fewest columns: a roll of 58 mm has 32. */
  public static final int NARROWEST = 32;

  /** The most columns: a sheet in a small type. */
  public static final int WIDEST = 100;

  /** A roll of 80 mm has 42 or 48 columns; 42 fit both (common practice). */
  public static final int USUAL = 42;

  /** Names are written beside what they name up to this many columns. */
  private static final int LONGEST_LABEL = 11;

  private final int width;
  private final List<String> lines = new ArrayList<>();

  private SlipText(int width) {
    this.width = width;
  }

  /**
   * The slip in lines, the last with its end of line.
   *
   * @param width columns, {@value #NARROWEST} to {@value #WIDEST}
   */
  public static String of(Slip slip, int width) {
    if (width < NARROWEST || width > WIDEST) {
      throw new IllegalArgumentException(
          "expected %d to %d columns, found %d".formatted(NARROWEST, WIDEST, width));
    }
    SlipText text = new SlipText(width);
    text.lines.addAll(Columns.lines(slip.title(), width));
    text.lines.add("=".repeat(width));
    for (Slip.Section section : slip.sections()) {
      text.section(section);
    }
    return String.join("\n", text.lines) + "\n";
  }

  private void section(Slip.Section section) {
    if (!lines.get(lines.size() - 1).startsWith("=")) {
      lines.add("");
    }
    lines.addAll(Columns.lines(section.heading().toUpperCase(Locale.ROOT), width));
    int beside =
        section.parts().stream()
            .filter(Fact.class::isInstance)
            .mapToInt(part -> Columns.of(((Fact) part).label()))
            .filter(columns -> columns <= LONGEST_LABEL)
            .max()
            .orElse(0);
    section.parts().forEach(part -> part(part, beside + 2));
  }

  private void part(Part part, int indent) {
    if (part instanceof Fact fact) {
      fact(fact, indent);
    } else if (part instanceof Headline headline) {
      Columns.lines(headline.text(), width - 4).forEach(line -> lines.add("  " + line));
    } else if (part instanceof Sentence sentence) {
      lines.addAll(Columns.lines(sentence.text(), width));
    }
  }

  /** A name that is too long for its column stands above what it names. */
  private void fact(Fact fact, int indent) {
    String margin = " ".repeat(indent);
    boolean above = Columns.of(fact.label()) > indent - 2;
    if (above) {
      lines.addAll(Columns.lines(fact.label(), width));
    }
    String before = above ? margin : fact.label() + margin.substring(Columns.of(fact.label()));
    for (String line : Columns.lines(fact.text(), width - indent)) {
      lines.add(before + line);
      before = margin;
    }
  }
}
