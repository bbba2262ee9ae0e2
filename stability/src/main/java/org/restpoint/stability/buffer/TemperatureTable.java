package org.restpoint.stability.buffer;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Values at temperatures, with straight lines between them.
 *
 * <p>{@code v = v1 + (v2 − v1)·(t − t1)/(t2 − t1)} between neighbours 1 and 2.
 *
 * <p>Edge results: at a point its own value, to the last bit; outside the first and last point, or
 * for no number, empty: a table knows nothing beyond its ends.
 *
 * <p>Method: linear interpolation, whose error is at most h²/8·max|v″| for a distance h of the
 * points. So leaving every second row of a smooth table out shows four times the error of the whole
 * one.
 *
 * <p>Reference: G. Dahlquist, Å. Björck, Numerical Methods in Scientific Computing, vol. I, SIAM
 * 2008, section 4.2.
 *
 * @param points at least two, their temperatures rising
 */
public record TemperatureTable(List<Point> points) {

  /**
   * A row of the table.
   *
   * @param celsius °C, finite
   * @param value finite
   */
  public record Point(double celsius, double value) {

    public Point {
      if (!Double.isFinite(celsius) || !Double.isFinite(value)) {
        throw new IllegalArgumentException(
            "a row holds two finite numbers, not " + celsius + " °C and " + value);
      }
    }
  }

  public TemperatureTable {
    points = List.copyOf(points);
    if (points.size() < 2) {
      throw new IllegalArgumentException(
          "a table over temperature has at least two rows, not " + points.size());
    }
    for (int i = 1; i < points.size(); i++) {
      if (!(points.get(i).celsius() > points.get(i - 1).celsius())) {
        throw new IllegalArgumentException(
            "the temperatures of a table rise from row to row: after "
                + points.get(i - 1).celsius()
                + " °C comes "
                + points.get(i).celsius()
                + " °C");
      }
    }
  }

  /**
   * A table with equal distances.
   *
   * @param firstCelsius the temperature of the first value
   * @param stepKelvin from one value to the next, above zero
   * @param values at least two
   */
  public static TemperatureTable every(double firstCelsius, double stepKelvin, double... values) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      points.add(new Point(firstCelsius + i * stepKelvin, values[i]));
    }
    return new TemperatureTable(points);
  }

  /** The lowest temperature it knows, °C. */
  public double lowestCelsius() {
    return points.get(0).celsius();
  }

  /** The highest temperature it knows, °C. */
  public double highestCelsius() {
    return points.get(points.size() - 1).celsius();
  }

  /** The value at a temperature; empty outside the table. */
  public OptionalDouble at(double celsius) {
    if (!(celsius >= lowestCelsius() && celsius <= highestCelsius())) {
      return OptionalDouble.empty();
    }
    int next = 1;
    while (points.get(next).celsius() < celsius) {
      next++;
    }
    Point left = points.get(next - 1);
    Point right = points.get(next);
    double share = (celsius - left.celsius()) / (right.celsius() - left.celsius());
    return OptionalDouble.of((1 - share) * left.value() + share * right.value());
  }
}
