package org.restpoint.stability.settle1;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Writes a picture of a fixed size: shapes and words on white, in the reader's own sans-serif. */
final class Svg {

  /** Legible at this width, in px. */
  static final int WIDTH = 720;

  /** Size of words, in px. */
  static final int WORDS = 13;

  private static final String GREY = "#444444";

  private final StringBuilder shapes = new StringBuilder();

  /** Where words stand against their point. */
  enum Anchor {
    START,
    MIDDLE,
    END;

    private String svg() {
      return switch (this) {
        case START -> "start";
        case MIDDLE -> "middle";
        case END -> "end";
      };
    }
  }

  /** A place, in px. */
  record Point(double x, double y) {}

  void line(List<Point> points, Look look) {
    String places =
        points.stream()
            .map(point -> px(point.x()) + "," + px(point.y()))
            .collect(Collectors.joining(" "));
    add(
        "<polyline fill='none' stroke='%s' stroke-width='%s' stroke-dasharray='%s' points='%s'/>",
        look.colour(), px(look.width()), look.dashes(), places);
  }

  void rectangle(Point corner, double width, double height, String colour) {
    add(
        "<rect x='%s' y='%s' width='%s' height='%s' fill='%s'/>",
        px(corner.x()), px(corner.y()), px(width), px(height), colour);
  }

  void words(Point at, Anchor anchor, String words) {
    add(
        "<text x='%s' y='%s' text-anchor='%s' fill='%s'>%s</text>",
        px(at.x()), px(at.y()), anchor.svg(), GREY, escaped(words));
  }

  void wordsUpwards(Point at, String words) {
    add(
        "<text transform='translate(%s %s) rotate(-90)' text-anchor='middle' fill='%s'>%s</text>",
        px(at.x()), px(at.y()), GREY, escaped(words));
  }

  /** The mark of a series: shapes differ as well as colours. */
  void mark(Point at, Look look) {
    String path =
        switch (look.shape()) {
          case CIRCLE -> "M-5 0a5 5 0 1 0 10 0a5 5 0 1 0 -10 0z";
          case SQUARE -> "M-4.5 -4.5h9v9h-9z";
          case DIAMOND -> "M0 -6L6 0L0 6L-6 0z";
          case TRIANGLE -> "M0 -6L6 5H-6z";
          case CROSS -> "M-5 -5L5 5M-5 5L5 -5";
        };
    add(
        "<path transform='translate(%s %s)' d='%s' fill='%s' stroke='%s' stroke-width='1.5'/>",
        px(at.x()), px(at.y()), path, look.colour(), look.colour());
  }

  /** Nothing drawn until {@link #unclip} shows outside. */
  void clip(String name, Point corner, double width, double height) {
    add(
        "<clipPath id='%s'><rect x='%s' y='%s' width='%s' height='%s'/></clipPath>"
            + "<g clip-path='url(#%s)'>",
        name, px(corner.x()), px(corner.y()), px(width), px(height), name);
  }

  void unclip() {
    shapes.append("</g>\n");
  }

  String picture(int height, String title) {
    String opening =
        String.format(
            Locale.ROOT,
            "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 %1$d %2$d' width='%1$d'"
                + " height='%2$d' font-family='sans-serif' font-size='%3$d' role='img'>\n",
            WIDTH,
            height,
            WORDS);
    return opening
        + "<title>"
        + escaped(title)
        + "</title>\n<rect width='100%' height='100%' fill='#ffffff'/>\n"
        + shapes
        + "</svg>\n";
  }

  private void add(String format, Object... values) {
    shapes.append(String.format(Locale.ROOT, format, values)).append('\n');
  }

  private static String px(double value) {
    return Spread.number(value, 1);
  }

  private static String escaped(String words) {
    return words.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
