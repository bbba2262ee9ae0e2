package org.restpoint.stability.fit;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Standards for a curve {@code y = a + s·τ·log10(c + b)}.
 *
 * <p>For a given b the curve is the {@linkplain WeightedLine line} of y on {@code τ·log10(c + b)},
 * fitted by {@link #atBackground}. All three parameters are fitted by {@link #fit}: b is first
 * sought from a thousandth of the lowest standard up to the highest one, eight to a decade (from
 * 10⁻⁹ of it where a standard of 0 lets b go lower), then a, s and ln b are fitted together by
 * {@link CurveFit}. The logarithm keeps b above 0 and lets a change of unit pass through unchanged.
 *
 * <p>The bend is significant when χ² falls by more than chance explains: by {@code Δ = χ²(line) −
 * χ²(curve)}, with probability {@code ½·P(χ²(1) > Δ)}, or where the curve's own scatter is
 * inconsistent {@code P(T > √(Δ·ν/χ²(curve)))} with ν = n − 3. The half stands for b being at its
 * bound, where half of all good lines would rather have a b below 0. For a standard of 0 no line
 * exists, so the probability is 0.
 *
 * <p>Edge results: those of {@link LowEndFit}. A line that bends the other way (steeper at the low
 * end) is {@link LowEndFit.Straight}: b stays at its bound.
 *
 * <p>Reference: H. Chernoff, On the distribution of the likelihood ratio, Ann. Math. Stat. 25
 * (1954) 573, doi 10.1214/aoms/1177728725.
 */
public final class LowEndStandards {

  private static final int PARAMETERS = 3;

  /** At the lowest standard a thousandth of it as b is 0.03 mV of a monovalent ion. */
  private static final double LOWEST_SHARE = 1e-3;

  private static final double LOWEST_SHARE_WITH_ZERO = 1e-9;
  private static final int TRIES_PER_DECADE = 8;

  private final double[] concentrations;
  private final double[] tau;
  private final double[] y;
  private final double[] u;

  private LowEndStandards(double[] concentrations, double[] tau, double[] y, double[] u) {
    this.concentrations = concentrations;
    this.tau = tau;
    this.y = y;
    this.u = u;
  }

  /**
   * Takes the standards.
   *
   * @param concentrations c, 0 or above, one at least above 0
   * @param tau τ, above 0: temperature over reference temperature; 1 without compensation
   * @param y potentials
   * @param u their standard uncertainties, above 0
   * @throws IllegalArgumentException for values outside these ranges or columns of unequal length
   */
  public static LowEndStandards of(double[] concentrations, double[] tau, double[] y, double[] u) {
    Observations.require(1, concentrations, y, u);
    Observations.require(1, tau, y, u);
    boolean anyAbove = false;
    for (int i = 0; i < y.length; i++) {
      if (!(concentrations[i] >= 0) || !(tau[i] > 0)) {
        throw new IllegalArgumentException(
            "standard "
                + (i + 1)
                + " has a concentration of 0 or above and a temperature ratio above 0, found "
                + concentrations[i]
                + " and "
                + tau[i]);
      }
      anyAbove |= concentrations[i] > 0;
    }
    if (!anyAbove) {
      throw new IllegalArgumentException("one standard at least has a concentration above 0");
    }
    return new LowEndStandards(concentrations.clone(), tau.clone(), y.clone(), u.clone());
  }

  /**
   * The line through the standards for a fixed b; b = 0 is the straight line.
   *
   * @return empty where all standards have the same {@code τ·log10(c + b)}, or one lies at 0
   */
  public Optional<WeightedLine> atBackground(double background) {
    if (!(background >= 0) || Double.isInfinite(background)) {
      throw new IllegalArgumentException("b is 0 or above, found " + background);
    }
    double[] x = new double[y.length];
    for (int i = 0; i < x.length; i++) {
      double sum = concentrations[i] + background;
      if (sum == 0) {
        return Optional.empty();
      }
      x[i] = tau[i] * Math.log10(sum);
    }
    return x.length < 2 ? Optional.empty() : WeightedLine.ifAny(x, y, u);
  }

  /**
   * Fits a, s and b, and tells whether the bend is more than chance.
   *
   * @param significance probability by chance up to which the bend counts, above 0 and below 1
   */
  public LowEndFit fit(double significance) {
    if (!(significance > 0 && significance < 1)) {
      throw new IllegalArgumentException(
          "a significance is above 0 and below 1, found " + significance);
    }
    if (y.length <= PARAMETERS) {
      return new LowEndFit.TooFewStandards(y.length, PARAMETERS + 1);
    }
    Optional<WeightedLine> line = atBackground(0);
    Start start = start();
    if (start.line == null) {
      return new LowEndFit.Undetermined(LowEndFit.Reason.ALIKE);
    }
    CurveFitOutcome outcome =
        CurveFit.USUAL.fit(
            new LowEndModel(concentrations, tau),
            y,
            u,
            start.line.estimate().intercept(),
            start.line.estimate().slope(),
            Math.log(start.background));
    double straight =
        line.map(fit -> fit.consistency().chiSquare()).orElse(Double.POSITIVE_INFINITY);
    Consistency reached =
        outcome instanceof CurveFitOutcome.Converged converged
            ? converged.consistency()
            : new Consistency(start.line.consistency().chiSquare(), y.length - PARAMETERS);
    double probability = probability(straight, reached);
    if (line.isPresent() && probability > significance) {
      return new LowEndFit.Straight(line.get(), probability);
    }
    if (!(outcome instanceof CurveFitOutcome.Converged converged)) {
      return new LowEndFit.Undetermined(
          start.background < highest()
              ? LowEndFit.Reason.NOT_CONVERGED
              : LowEndFit.Reason.NO_LINEAR_PART);
    }
    LowEndCurve curve = LowEndCurve.of(converged);
    return curve.background() > highest()
        ? new LowEndFit.Undetermined(LowEndFit.Reason.NO_LINEAR_PART)
        : new LowEndFit.Curved(curve, probability);
  }

  /** The best b of those tried, with its line; no line where the standards are alike. */
  private record Start(double background, @Nullable WeightedLine line) {}

  private Start start() {
    double lowestAbove = Double.POSITIVE_INFINITY;
    boolean zero = false;
    for (double c : concentrations) {
      zero |= c == 0;
      lowestAbove = c > 0 ? Math.min(lowestAbove, c) : lowestAbove;
    }
    double lowest = lowestAbove * (zero ? LOWEST_SHARE_WITH_ZERO : LOWEST_SHARE);
    int tries = (int) Math.ceil(TRIES_PER_DECADE * Math.log10(highest() / lowest));
    Start best = new Start(lowest, null);
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i <= tries; i++) {
      double background = lowest * Math.pow(10, (double) i / TRIES_PER_DECADE);
      WeightedLine line = atBackground(background).orElse(null);
      if (line != null && line.consistency().chiSquare() < least) {
        least = line.consistency().chiSquare();
        best = new Start(background, line);
      }
    }
    return best;
  }

  private double highest() {
    double highest = 0;
    for (double c : concentrations) {
      highest = Math.max(highest, c);
    }
    return highest;
  }

  private static double probability(double straight, Consistency curve) {
    if (Double.isInfinite(straight)) {
      return 0;
    }
    double gain = Math.max(0, straight - curve.chiSquare());
    return curve.consistent()
        ? 0.5 * new ChiSquare(1).upperTail(gain)
        : new StudentT(curve.degreesOfFreedom()).upperTail(Math.sqrt(gain) / curve.inflation());
  }
}
