package org.restpoint.stability.settle1;

import java.util.List;

/**
 * How a series is drawn. Colours are those that M. Okabe and K. Ito chose for readers who cannot
 * tell red from green (2008, from memory); dashes and marks differ as well.
 *
 * @param colour of lines and marks
 * @param dashes of lines
 * @param width of lines, in px
 * @param shape of marks
 */
record Look(String colour, String dashes, double width, Shape shape) {

  /** The mark. */
  enum Shape {
    CIRCLE,
    SQUARE,
    DIAMOND,
    TRIANGLE,
    CROSS
  }

  static final Look GRID = new Look("#dddddd", "none", 1, Shape.CROSS);
  static final Look AXIS = new Look("#444444", "none", 1, Shape.CROSS);
  static final Look READINGS = new Look("#888888", "none", 0.8, Shape.CROSS);

  private static final List<Look> SERIES =
      List.of(
          new Look("#0072b2", "none", 2, Shape.CIRCLE),
          new Look("#d55e00", "8 3", 2, Shape.SQUARE),
          new Look("#009e73", "2 3", 2.5, Shape.DIAMOND),
          new Look("#000000", "10 3 2 3", 2, Shape.TRIANGLE),
          new Look("#cc79a7", "none", 3, Shape.CROSS),
          new Look("#e69f00", "5 5", 3, Shape.CIRCLE),
          new Look("#56b4e9", "12 4", 3, Shape.SQUARE),
          new Look("#000000", "1 4", 2, Shape.DIAMOND),
          new Look("#0072b2", "4 2", 1.5, Shape.TRIANGLE),
          new Look("#d55e00", "none", 1.5, Shape.CROSS));

  /** That of a series, counted from 0; after the last they begin again. */
  static Look of(int series) {
    return SERIES.get(series % SERIES.size());
  }
}
