package org.restpoint.stability.settle1;

import java.util.List;
import org.restpoint.stability.settle1.Svg.Anchor;
import org.restpoint.stability.settle1.Svg.Point;

/** A plot with two linear axes within a picture; what leaves the axes is not shown. */
final class Chart {

  private static final double TICK_WORDS = 5;

  private final Svg svg;
  private final Point corner;
  private final double width;
  private final double height;
  private final Axis x;
  private final Axis y;

  /**
   * An axis.
   *
   * @param title with its unit
   * @param low where it begins
   * @param high where it ends
   * @param step from tick to tick
   */
  record Axis(String title, double low, double high, double step) {

    private double share(double value) {
      return (value - low) / (high - low);
    }

    private int ticks() {
      return (int) Math.round((high - low) / step);
    }

    private double tick(int i) {
      return low + i * step;
    }

    private String number(double value) {
      return Spread.number(value, step < 1 ? 1 : 0);
    }
  }

  Chart(Svg svg, Point corner, double width, double height, Axis x, Axis y) {
    this.svg = svg;
    this.corner = corner;
    this.width = width;
    this.height = height;
    this.x = x;
    this.y = y;
  }

  /** Draws the axes, and begins to hide what leaves them. */
  Chart begin(String name) {
    for (int i = 0; i <= x.ticks(); i++) {
      Point foot = at(x.tick(i), y.low());
      svg.line(List.of(foot, at(x.tick(i), y.high())), Look.GRID);
      Point below = new Point(foot.x(), foot.y() + Svg.WORDS + TICK_WORDS);
      svg.words(below, Anchor.MIDDLE, x.number(x.tick(i)));
    }
    for (int i = 0; i <= y.ticks(); i++) {
      Point foot = at(x.low(), y.tick(i));
      svg.line(List.of(foot, at(x.high(), y.tick(i))), Look.GRID);
      Point left = new Point(foot.x() - TICK_WORDS, foot.y() + Svg.WORDS / 3.0);
      svg.words(left, Anchor.END, y.number(y.tick(i)));
    }
    double middle = corner.x() + width / 2;
    double bottom = corner.y() + height;
    svg.words(new Point(middle, bottom + 2.6 * Svg.WORDS), Anchor.MIDDLE, x.title());
    svg.wordsUpwards(new Point(corner.x() - 38, corner.y() + height / 2), y.title());
    svg.line(
        List.of(at(x.low(), y.high()), at(x.low(), y.low()), at(x.high(), y.low())), Look.AXIS);
    svg.clip(name, corner, width, height);
    return this;
  }

  /** What is drawn from here on may stand anywhere. */
  void end() {
    svg.unclip();
  }

  /** Where values stand in the picture. */
  Point at(double valueX, double valueY) {
    return new Point(
        corner.x() + width * x.share(valueX), corner.y() + height * (1 - y.share(valueY)));
  }

  /** A line through values. */
  void line(List<Point> values, Look look) {
    svg.line(values.stream().map(value -> at(value.x(), value.y())).toList(), look);
  }

  void mark(Point value, Look look) {
    svg.mark(at(value.x(), value.y()), look);
  }

  /** A band across the plot between two values of y. */
  void band(double low, double high, String colour) {
    Point top = at(x.low(), high);
    svg.rectangle(top, width, at(x.low(), low).y() - top.y(), colour);
  }
}
