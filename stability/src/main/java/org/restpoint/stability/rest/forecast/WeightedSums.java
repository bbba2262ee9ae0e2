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

  WeightedSums(int count) {
    this.count = count;
    this.g = new double[count];
    this.gg = new double[count];
    this.gy = new double[count];
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

  double weight() {
    return w;
  }

  double mean() {
    return y / w;
  }

  double mean(int shape) {
    return g[shape] / w;
  }

  /** Σw(y − ȳ)², 0 or above. */
  double square() {
    return Math.max(0, yy - y * y / w);
  }

  /** Σw(g − ḡ)², 0 or above. */
  double square(int shape) {
    return Math.max(0, gg[shape] - g[shape] * g[shape] / w);
  }

  /** Σw(g − ḡ)(y − ȳ). */
  double product(int shape) {
    return gy[shape] - g[shape] * y / w;
  }
}
