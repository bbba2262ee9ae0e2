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

  /** δ. */
  private static final double SHAPE_ERROR = 0.02;

  private static final double QUIETEST_SQUARE = 2 * 0.03 * 0.03;

  /** ν·ln s beyond which what a curve does not explain cannot be made up for. */
  private static final double HOPELESS = 15;

  private static final double AMPLITUDE_MILLIVOLTS = 60;
  private static final double AMPLITUDE_ACTIVITIES = 3;

  /** Seconds below which readings count alike. */
  private static final double LEAST_WEIGHT = 1;

  private static final double LEAST_ACTIVITY = 1e-4;

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
    double weight = potentials.weight();
    double freedom = Math.max(1, weight * weight / squaredWeights / noise.inflation());
    explain(inflated);
    double best = Double.POSITIVE_INFINITY;
    for (int i = 0; i < Candidates.COUNT; i++) {
      if (candidates.meanSquare[i] < best && solve(i, inflated)) {
        best = candidates.meanSquare[i];
      }
    }
    double worst = best * Math.exp(2 * HOPELESS / freedom);
    candidates.likelyCount = 0;
    for (int i = 0; i < Candidates.COUNT; i++) {
      if (candidates.meanSquare[i] <= worst && solve(i, inflated)) {
        candidates.likely[candidates.likelyCount] = i;
        candidates.likelyCount++;
      }
    }
    average.weigh(best, freedom, prior, noise.variance());
  }

  /** Λ on the scale of potentials, of weights as they stand. */
  private double potentialPrior(double inflated) {
    return inflated * latestWeight / (AMPLITUDE_MILLIVOLTS * AMPLITUDE_MILLIVOLTS);
  }

  /** Λ on the scale of activities. */
  private double activityPrior(double inflated) {
    double squared = millivoltsPerNeper * millivoltsPerNeper;
    return inflated * latestWeight / squared / (AMPLITUDE_ACTIVITIES * AMPLITUDE_ACTIVITIES);
  }

  private void explain(double inflated) {
    potentials.centre();
    activities.centre();
    double[] explained = candidates.explained;
    double onPotentials = potentialPrior(inflated);
    single(potentials, onPotentials, explained, 0, Shapes.COUNT);
    int first = Candidates.FIRST_ON_ACTIVITIES;
    single(activities, activityPrior(inflated), explained, first, Shapes.FIRST_POWER);
    pairs.explain(potentials, onPotentials, explained, Candidates.FIRST_PAIR);

    double[] meanSquare = candidates.meanSquare;
    square(meanSquare, 0, Shapes.COUNT, potentials.square(), 1);
    double unit = millivoltsPerNeper * millivoltsPerNeper;
    square(meanSquare, first, Candidates.FIRST_PAIR, activities.square(), unit);
    square(meanSquare, Candidates.FIRST_PAIR, Candidates.COUNT, potentials.square(), 1);
  }

  private static void single(
      WeightedSums sums, double prior, double[] explained, int place, int count) {
    double[] squares = sums.squares();
    double[] products = sums.products();
    for (int i = 0; i < count; i++) {
      explained[place + i] = products[i] * products[i] / (squares[i] + prior);
    }
  }

  /** s² of some curves, of which all together is to be explained; a unit of it is so many mV². */
  private void square(double[] meanSquare, int from, int to, double all, double unit) {
    double each = unit / potentials.weight();
    double granted = SHAPE_ERROR * SHAPE_ERROR * potentials.square() / potentials.weight();
    double quietest = QUIETEST_SQUARE * latestWeight / potentials.weight();
    for (int i = from; i < to; i++) {
      meanSquare[i] = Math.max(0, all - candidates.explained[i]) * each + granted + quietest;
    }
  }

  /** Puts down a curve's parameters; whether it comes to rest at a potential at all. */
  private boolean solve(int i, double inflated) {
    if (Candidates.isPair(i)) {
      solvePair(i, inflated);
      return true;
    }
    if (!Candidates.isOnActivities(i)) {
      solve(i, i, potentials, potentialPrior(inflated), inflated);
      return true;
    }
    double perUnit = inflated / (millivoltsPerNeper * millivoltsPerNeper);
    int shape = i - Candidates.FIRST_ON_ACTIVITIES;
    solve(i, shape, activities, activityPrior(inflated), perUnit);
    double rest = candidates.rest[i];
    if (rest < LEAST_ACTIVITY) {
      return false;
    }
    candidates.restMillivolts[i] = millivoltsPerNeper * Math.log(rest);
    candidates.variance[i] *= millivoltsPerNeper * millivoltsPerNeper / (rest * rest);
    return true;
  }

  private void solve(int i, int shape, WeightedSums sums, double prior, double inflated) {
    double c = sums.squares()[shape];
    double m = sums.means()[shape];
    double amplitude = sums.products()[shape] / (c + prior);
    double rest = sums.mean() - amplitude * m;
    candidates.amplitude[i] = amplitude;
    candidates.rest[i] = rest;
    candidates.restMillivolts[i] = rest;
    candidates.freedom[i] = 1 + c / prior;
    candidates.variance[i] = inflated * latestWeight * (1 / sums.weight() + m * m / (c + prior));
  }

  private void solvePair(int i, double inflated) {
    int pair = i - Candidates.FIRST_PAIR;
    int fast = pairs.fast(pair);
    int slow = pairs.slow(pair);
    double prior = potentialPrior(inflated);
    double c11 = potentials.squares()[fast] + prior;
    double c22 = potentials.squares()[slow] + prior;
    double c12 = pairs.product(pair, potentials);
    double c1 = potentials.products()[fast];
    double c2 = potentials.products()[slow];
    double det = Pairs.determinant(c11, c22, c12, prior);
    double a = (c22 * c1 - c12 * c2) / det;
    double b = (c11 * c2 - c12 * c1) / det;
    double m1 = potentials.means()[fast];
    double m2 = potentials.means()[slow];
    double rest = potentials.mean() - a * m1 - b * m2;
    double spread = (m1 * m1 * c22 - 2 * m1 * m2 * c12 + m2 * m2 * c11) / det;
    candidates.amplitude[i] = a;
    candidates.slowAmplitude[pair] = b;
    candidates.rest[i] = rest;
    candidates.restMillivolts[i] = rest;
    candidates.freedom[i] = det / (prior * prior);
    candidates.variance[i] =
        inflated * latestWeight * (1 / potentials.weight() + Math.max(0, spread));
  }

  /** What came of it. */
  ModelAverage average() {
    return average;
  }
}
