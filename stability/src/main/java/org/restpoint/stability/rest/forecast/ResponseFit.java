package org.restpoint.stability.rest.forecast;

/**
 * Response curves fitted to weighted readings; {@link ModelAverage} weighs them.
 *
 * <pre>
 *   y    = E + a·g(t) + e                      mV since the first reading; or the same of 10^(y/S)
 *   w    = max(t, 1 s)                         weight of a reading, at t since the step
 *   C, c   centred Σw·g·g, Σw·g·y;  m = ḡ      a number, or 2 × 2 for a pair
 *   Λ    = σ²κ/A²                              amplitudes are 0 ± A before any reading
 *   a    = (C + Λ)⁻¹c,   E = ȳ − a·m           least squares with that prior
 *   s²   = (R + 2·s₀² + δ²·Syy)/n              R = Syy − a·c, n = Σw
 *   V(E) = σ²κ·(1/n + m(C + Λ)⁻¹m)
 *   ν    = (Σw)²/(κ·Σw²)                       readings that would tell as much, were they independent
 * </pre>
 *
 * <p>Weights are divided by the latest, so that it counts 1. Older readings count less in
 * proportion to their time since the step: the window grows with the time, as do the time constants
 * that can still matter. σ² and κ are those of {@link Noise}. On the scale of activities a reading
 * has the weight w/u², u = 10^(y/S), which makes its residuals, times S/ln 10, residuals in mV; A
 * is 60 mV (a decade) or 3 times the first activity.
 *
 * <p>s₀ = 0.03 mV, no electrode is quieter; δ = {@value #SHAPE_ERROR}: no shape is trusted to
 * describe a response better than this part of its size. Without it a curve that is nearly right
 * would be taken for certain (our choice, tried from 0 to 0.05 on invented curves).
 *
 * <p>Reference: A. E. Hoerl, R. W. Kennard, Technometrics 12 (1970) 55 (from memory).
 */
final class ResponseFit {

  private static final double SHAPE_ERROR = 0.03;
  private static final double QUIETEST_SQUARE = 2 * 0.03 * 0.03;
  private static final double AMPLITUDE_MILLIVOLTS = 60;
  private static final double AMPLITUDE_ACTIVITIES = 3;

  /** Seconds below which readings count alike. */
  private static final double LEAST_WEIGHT = 1;

  /** ± decades × ln 10 beyond which an activity is held: no solution spans seven decades. */
  private static final double MOST_EXPONENT = 16;

  private final double millivoltsPerNeper;
  private final WeightedSums potentials = new WeightedSums(Shapes.COUNT);
  private final WeightedSums activities = new WeightedSums(Shapes.FIRST_POWER);
  private final Pairs pairs = new Pairs();
  private final Candidates candidates = new Candidates();
  private final ModelAverage average;
  private double squaredWeights;
  private double latestWeight;

  /** Fits for an electrode of a slope in mV/decade, of either sign. */
  ResponseFit(double slopeMillivoltsPerDecade) {
    this.millivoltsPerNeper = slopeMillivoltsPerDecade / Math.log(10);
    this.average = new ModelAverage(candidates, pairs, millivoltsPerNeper);
  }

  void clear() {
    potentials.clear();
    activities.clear();
    pairs.clear();
    squaredWeights = 0;
    average.clear();
  }

  /**
   * Takes a reading.
   *
   * @param seconds since the step
   * @param millivolts since the first reading
   * @param shapes at that time
   */
  void add(double seconds, double millivolts, double[] shapes) {
    double weight = Math.max(seconds, LEAST_WEIGHT);
    double nepers = millivolts / millivoltsPerNeper;
    double activity = Math.exp(Math.max(-MOST_EXPONENT, Math.min(MOST_EXPONENT, nepers)));
    potentials.add(weight, millivolts, shapes);
    activities.add(weight / (activity * activity), activity, shapes);
    pairs.add(weight, shapes);
    squaredWeights += weight * weight;
    latestWeight = weight;
  }

  /** Fits all curves and weighs them. */
  void fit(Noise noise, PriorTable prior) {
    double inflated = noise.variance() * noise.inflation();
    fitPotentials(inflated);
    fitActivities(inflated);
    fitPairs(inflated);
    double freedom = Math.max(1, effectiveReadings() / noise.inflation());
    average.weigh(freedom, prior, noise.variance());
  }

  private double effectiveReadings() {
    double weight = potentials.weight();
    return weight * weight / squaredWeights;
  }

  private double readings() {
    return potentials.weight() / latestWeight;
  }

  private double meanSquare(double unexplained, double all) {
    double granted = SHAPE_ERROR * SHAPE_ERROR * all;
    return (Math.max(0, unexplained) + granted + QUIETEST_SQUARE) / readings();
  }

  private void fitPotentials(double inflated) {
    double all = potentials.square() / latestWeight;
    double prior = inflated / (AMPLITUDE_MILLIVOLTS * AMPLITUDE_MILLIVOLTS);
    for (int i = 0; i < Shapes.COUNT; i++) {
      double c = potentials.square(i) / latestWeight;
      double product = potentials.product(i) / latestWeight;
      double amplitude = product / (c + prior);
      double m = potentials.mean(i);
      double rest = potentials.mean() - amplitude * m;
      candidates.amplitude[i] = amplitude;
      candidates.rest[i] = rest;
      candidates.restMillivolts[i] = rest;
      candidates.meanSquare[i] = meanSquare(all - amplitude * product, all);
      candidates.freedom[i] = 1 + c / prior;
      candidates.variance[i] = inflated * (1 / readings() + m * m / (c + prior));
    }
  }

  private void fitActivities(double inflatedMillivolts) {
    double squared = millivoltsPerNeper * millivoltsPerNeper;
    double inflated = inflatedMillivolts / squared;
    double all = activities.square() / latestWeight * squared;
    double weight = activities.weight() / latestWeight;
    double prior = inflated / (AMPLITUDE_ACTIVITIES * AMPLITUDE_ACTIVITIES);
    for (int shape = 0; shape < Shapes.FIRST_POWER; shape++) {
      int i = Candidates.FIRST_ON_ACTIVITIES + shape;
      double c = activities.square(shape) / latestWeight;
      double product = activities.product(shape) / latestWeight;
      double amplitude = product / (c + prior);
      double m = activities.mean(shape);
      double rest = activities.mean() - amplitude * m;
      candidates.amplitude[i] = amplitude;
      candidates.rest[i] = rest;
      candidates.meanSquare[i] = meanSquare(all - amplitude * product * squared, all);
      candidates.freedom[i] = 1 + c / prior;
      candidates.variance[i] =
          inflated * (1 / weight + m * m / (c + prior)) * squared / (rest * rest);
    }
  }

  private void fitPairs(double inflated) {
    double all = potentials.square() / latestWeight;
    double prior = inflated / (AMPLITUDE_MILLIVOLTS * AMPLITUDE_MILLIVOLTS);
    for (int pair = 0; pair < Pairs.COUNT; pair++) {
      int i = Candidates.FIRST_PAIR + pair;
      int fast = pairs.fast(pair);
      int slow = pairs.slow(pair);
      double c11 = potentials.square(fast) / latestWeight + prior;
      double c22 = potentials.square(slow) / latestWeight + prior;
      double c12 = pairs.product(pair, potentials) / latestWeight;
      double c1 = potentials.product(fast) / latestWeight;
      double c2 = potentials.product(slow) / latestWeight;
      // Not below what the prior alone gives, whatever the rounding of nearly equal exponentials.
      double det = Math.max(c11 * c22 - c12 * c12, prior * prior);
      double a = (c22 * c1 - c12 * c2) / det;
      double b = (c11 * c2 - c12 * c1) / det;
      double m1 = potentials.mean(fast);
      double m2 = potentials.mean(slow);
      double rest = potentials.mean() - a * m1 - b * m2;
      double spread = (m1 * m1 * c22 - 2 * m1 * m2 * c12 + m2 * m2 * c11) / det;
      candidates.amplitude[i] = a;
      candidates.slowAmplitude[pair] = b;
      candidates.rest[i] = rest;
      candidates.restMillivolts[i] = rest;
      candidates.meanSquare[i] = meanSquare(all - a * c1 - b * c2, all);
      candidates.freedom[i] = det / (prior * prior);
      candidates.variance[i] = inflated * (1 / readings() + Math.max(0, spread));
    }
  }

  /** What came of it. */
  ModelAverage average() {
    return average;
  }
}
