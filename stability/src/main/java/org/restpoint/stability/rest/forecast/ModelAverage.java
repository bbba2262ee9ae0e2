package org.restpoint.stability.rest.forecast;

import java.util.Arrays;

/**
 * Curves weighed by how well they fit, and the mean of what they say.
 *
 * <pre>
 *   P ∝ P₀·s^(−ν)·det(1 + Λ⁻¹C)^(−1/2)
 *   E̅ = Σ P·E
 *   V = Σ P·(V(E)·max(1, s̄²/σ²) + (E − E̅)²)
 * </pre>
 *
 * Symbols as in {@link ResponseFit}, P₀ the likelihood before any reading, s̄² = Σ P·s². P is the
 * posterior of a normal error of unknown variance, ν its effective degrees of freedom; V holds how
 * far the curves disagree, so that a rest on which they do not agree is not taken for known. Where
 * no curve fits as well as the noise allows, all are known worse.
 *
 * <p>Edge results: a curve on activities whose rest is 0 or below has P = 0.
 *
 * <p>Reference: J. A. Hoeting, D. Madigan, A. E. Raftery, C. T. Volinsky, Statist. Sci. 14 (1999)
 * 382, doi 10.1214/ss/1009212519.
 */
final class ModelAverage {

  /** e^−30 of the likeliest is nothing. */
  private static final double NEGLIGIBLE = -30;

  /** Curves less likely are left out of what is foretold of the next reading. */
  private static final double UNLIKELY = 1e-4;

  private static final double LEAST_ACTIVITY = 1e-4;

  private final Candidates candidates;
  private final Pairs pairs;
  private final double millivoltsPerNeper;
  private final int[] likely = new int[Candidates.COUNT];
  private int likelyCount;
  private double restMillivolts;
  private double variance;

  ModelAverage(Candidates candidates, Pairs pairs, double millivoltsPerNeper) {
    this.candidates = candidates;
    this.pairs = pairs;
    this.millivoltsPerNeper = millivoltsPerNeper;
  }

  void clear() {
    likelyCount = 0;
  }

  /** Weighs the curves as they were fitted. */
  void weigh(double freedom, PriorTable prior, double noiseVariance) {
    average(likelihoods(freedom, prior), noiseVariance);
  }

  /** Weighs the curves; the sum of the weights. */
  private double likelihoods(double freedom, PriorTable prior) {
    double best = Double.POSITIVE_INFINITY;
    for (int i = 0; i < Candidates.COUNT; i++) {
      best = Math.min(best, candidates.meanSquare[i]);
    }
    // Freedom costs at most a few dozen nepers: what explains so much less need not be weighed.
    double worst = best * Math.exp(-4 * NEGLIGIBLE / freedom);
    double highest = Double.NEGATIVE_INFINITY;
    double[] weight = candidates.weight;
    Arrays.fill(weight, 0);
    likelyCount = 0;
    for (int i = 0; i < Candidates.COUNT; i++) {
      if (candidates.meanSquare[i] > worst || !hasRest(i)) {
        continue;
      }
      double before = prior.log(i, candidates.restMillivolts[i]);
      double square = candidates.meanSquare[i] / best;
      weight[i] = before - 0.5 * (freedom * Math.log(square) + Math.log(candidates.freedom[i]));
      highest = Math.max(highest, weight[i]);
      likely[likelyCount] = i;
      likelyCount++;
    }
    double sum = 0;
    for (int k = 0; k < likelyCount; k++) {
      int i = likely[k];
      double log = weight[i] - highest;
      weight[i] = log < NEGLIGIBLE ? 0 : Math.exp(log);
      sum += weight[i];
    }
    return sum;
  }

  /** Whether a curve rests at a potential at all; puts it down for one on activities. */
  private boolean hasRest(int i) {
    if (i < Candidates.FIRST_ON_ACTIVITIES || i >= Candidates.FIRST_PAIR) {
      return true;
    }
    if (candidates.rest[i] < LEAST_ACTIVITY) {
      return false;
    }
    candidates.restMillivolts[i] = millivoltsPerNeper * Math.log(candidates.rest[i]);
    return true;
  }

  private void average(double sum, double noiseVariance) {
    double mean = 0;
    double square = 0;
    int kept = 0;
    for (int k = 0; k < likelyCount; k++) {
      int i = likely[k];
      candidates.weight[i] /= sum;
      mean += candidates.weight[i] * candidates.restMillivolts[i];
      square += candidates.weight[i] * candidates.meanSquare[i];
    }
    double worse = Math.max(1, square / noiseVariance);
    double total = 0;
    for (int k = 0; k < likelyCount; k++) {
      int i = likely[k];
      double off = candidates.restMillivolts[i] - mean;
      total += candidates.weight[i] * (candidates.variance[i] * worse + off * off);
      if (candidates.weight[i] >= UNLIKELY) {
        likely[kept] = i;
        kept++;
      }
    }
    likelyCount = kept;
    restMillivolts = mean;
    variance = total;
  }

  /** What the likely curves of the last fit foretell, in mV since the first reading. */
  double foretell(double[] shapes) {
    double sum = 0;
    double weights = 0;
    for (int k = 0; k < likelyCount; k++) {
      int i = likely[k];
      sum += candidates.weight[i] * value(i, shapes);
      weights += candidates.weight[i];
    }
    return sum / weights;
  }

  private double value(int i, double[] shapes) {
    if (i >= Candidates.FIRST_PAIR) {
      int pair = i - Candidates.FIRST_PAIR;
      return candidates.rest[i]
          + candidates.amplitude[i] * shapes[pairs.fast(pair)]
          + candidates.slowAmplitude[pair] * shapes[pairs.slow(pair)];
    }
    if (i < Candidates.FIRST_ON_ACTIVITIES) {
      return candidates.rest[i] + candidates.amplitude[i] * shapes[i];
    }
    double shape = shapes[i - Candidates.FIRST_ON_ACTIVITIES];
    double activity = candidates.rest[i] + candidates.amplitude[i] * shape;
    return millivoltsPerNeper * Math.log(Math.max(LEAST_ACTIVITY, activity));
  }

  /** E̅ in mV since the first reading. */
  double restMillivolts() {
    return restMillivolts;
  }

  /** V in mV². */
  double variance() {
    return variance;
  }

  /** P of all curves, in the order of {@link Candidates}. */
  double[] weights() {
    return candidates.weight.clone();
  }
}
