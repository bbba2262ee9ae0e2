package org.restpoint.stability.rest.forecast;

import java.util.Arrays;

/**
 * What a straight line {@code y = E + a·g} through weighted readings needs, for the first so many
 * shapes at once: Σw, Σwy, Σwy², and for each shape Σwg, Σwg², Σwgy. A reading is added in a few
 * operations a shape; none is kept.
 */
final class WeightedSums {

  private final int count;
  private double w;
  private double y;
  private double yy;
  private final double[] g;
  private final double[] gg;
  private final double[] gy;
  private final double[] means;
  private final double[] squares;
  private final double[] products;

  WeightedSums(int count) {
    this.count = count;
    this.g = new double[count];
    this.gg = new double[count];
    this.gy = new double[count];
    this.means = new double[count];
    this.squares = new double[count];
    this.products = new double[count];
  }

  void clear() {
    w = 0;
    y = 0;
    yy = 0;
    Arrays.fill(g, 0);
    Arrays.fill(gg, 0);
    Arrays.fill(gy, 0);
  }

  void add(double weight, double value, double[] shapes) {
    w += weight;
    y += weight * value;
    yy += weight * value * value;
    for (int i = 0; i < count; i++) {
      double shape = shapes[i];
      double weighted = weight * shape;
      g[i] += weighted;
      gg[i] += weighted * shape;
      gy[i] += weighted * value;
    }
  }

  /** Makes means, squares and products about the means of what has been added. */
  void centre() {
    double each = 1 / w;
    double mean = y * each;
    for (int i = 0; i < count; i++) {
      double shape = g[i] * each;
      means[i] = shape;
      squares[i] = Math.max(0, gg[i] - g[i] * shape);
      products[i] = gy[i] - g[i] * mean;
    }
  }

  /** Σw. */
  double weight() {
    return w;
  }

  /** ȳ. */
  double mean() {
    return y / w;
  }

  /** Σw(y − ȳ)², 0 or above. */
  double square() {
    return Math.max(0, yy - y * y / w);
  }

  /** ḡ of each shape, when last centred. */
  double[] means() {
    return means;
  }

  /** Σw(g − ḡ)² of each shape, 0 or above, when last centred. */
  double[] squares() {
    return squares;
  }

  /** Σw(g − ḡ)(y − ȳ) of each shape, when last centred. */
  double[] products() {
    return products;
  }
}
