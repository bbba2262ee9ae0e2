package org.restpoint.stability.settle1;

import java.util.List;
import org.restpoint.stability.settle1.Svg.Anchor;
import org.restpoint.stability.settle1.Svg.Point;

/** Says which line or mark is which, a row each. */
final class Legend {

  /** Height of a row, in px. */
  static final int ROW = 19;

  private static final double SAMPLE = 34;

  private final Svg svg;
  private final double left;
  private double next;

  Legend(Svg svg, Point firstRow) {
    this.svg = svg;
    this.left = firstRow.x();
    this.next = firstRow.y();
  }

  void line(String words, Look look) {
    double middle = next - Svg.WORDS / 3.0;
    svg.line(List.of(new Point(left, middle), new Point(left + SAMPLE, middle)), look);
    words(words);
  }

  void mark(String words, Look look) {
    svg.mark(new Point(left + SAMPLE / 2, next - Svg.WORDS / 3.0), look);
    words(words);
  }

  void words(String words) {
    svg.words(new Point(left + SAMPLE + 8, next), Anchor.START, words);
    next += ROW;
  }
}
