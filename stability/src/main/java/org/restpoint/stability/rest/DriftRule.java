package org.restpoint.stability.rest;

import java.time.Duration;

/**
 * A drift below a limit: IUPAC's practical response time ends when the slope of the potential
 * against time has become as small as a limit chosen beforehand.
 *
 * <pre>
 *   at rest   when |d| + k·u(d) ≤ D    over the last T
 *   E       = v̄ + d·(t − t̄)            t the latest reading's time
 *   u²(E)   = s²·(1/n + (t − t̄)²/Stt) + (D·T)²/3
 * </pre>
 *
 * d, u(d), s, Stt as in {@link Drift}; D in mV/min, T in min.
 *
 * <p>The window holds all readings of the last T and the one before them, which stands for its
 * beginning. It is not full, and the potential not at rest, with fewer readings than asked for, or
 * with a pause longer than T/2 in it: a line across a pause says nothing about the time within.
 *
 * <p>E is the line's value at its end and not the mean, which lags behind a drift by d·T/2: the
 * resting value lies ahead. An electrode that comes to rest exponentially with a time constant τ
 * has d·τ still to go, which D·T covers for every τ up to T; so it enters as the half-width of a
 * rectangular distribution (JCGM 100:2008, 4.3.7), as w does in {@link ConsecutiveRule}. Take T no
 * shorter than the electrode's time constant.
 *
 * <p>Edge results: all readings of one instant have no slope and are not at rest. A limit met
 * exactly is met; 10⁻⁹ mV/min is allowed for binary rounding.
 *
 * <p>References: R. P. Buck, E. Lindner, Pure Appl. Chem. 66 (1994) 2527, doi
 * 10.1351/pac199466122527; E. Lindner, K. Tóth, E. Pungor, Pure Appl. Chem. 58 (1986) 469, doi
 * 10.1351/pac198658030469.
 *
 * @param limitMillivoltsPerMinute D, above 0
 * @param over T, above 0, 1 day at most
 * @param standardErrors k, 0 to 10
 * @param atLeast n at least, 3 to 100 000
 */
public record DriftRule(
    double limitMillivoltsPerMinute, Duration over, double standardErrors, int atLeast)
    implements RestRule {

  /** One standard error: of drifts at the limit itself, one in six passes. Our choice. */
  public static final double USUAL_STANDARD_ERRORS = 1;

  /** Readings below which a standard error says little. Our choice. */
  public static final int USUAL_READINGS = 5;

  private static final int FEWEST_READINGS = 3;
  private static final int MOST_READINGS = 100_000;
  private static final double MOST_STANDARD_ERRORS = 10;
  private static final double SECONDS_PER_MINUTE = 60;

  /** As in {@link ConsecutiveRule}, of the way that the limit lets pass over the window. */
  private static final double BAND_WAYS = 3;

  public DriftRule {
    if (!(limitMillivoltsPerMinute > 0) || Double.isInfinite(limitMillivoltsPerMinute)) {
      throw new IllegalArgumentException(
          "a limit of drift is above 0 mV/min, not " + limitMillivoltsPerMinute);
    }
    Setting.checkSpan(over);
    if (over.isZero()) {
      throw new IllegalArgumentException("a drift needs a window longer than 0 s");
    }
    if (!(standardErrors >= 0) || standardErrors > MOST_STANDARD_ERRORS) {
      throw new IllegalArgumentException(
          "the rule adds 0 to 10 standard errors, not " + standardErrors);
    }
    if (atLeast < FEWEST_READINGS || atLeast > MOST_READINGS) {
      throw new IllegalArgumentException("the rule needs 3 to 100000 readings, not " + atLeast);
    }
  }

  /** The rule with one standard error and five readings at least. */
  public DriftRule(double limitMillivoltsPerMinute, Duration over) {
    this(limitMillivoltsPerMinute, over, USUAL_STANDARD_ERRORS, USUAL_READINGS);
  }

  /** What the limit lets pass over the window: D·T in mV. */
  double wayMillivolts() {
    return limitMillivoltsPerMinute * (over.toNanos() / 1e9 / SECONDS_PER_MINUTE);
  }

  @Override
  public RestDetector detector(double slopeMillivoltsPerDecade) {
    return new DriftDetector(this);
  }

  @Override
  public String describe() {
    StringBuilder words = new StringBuilder("drift within ");
    words
        .append(Setting.number(limitMillivoltsPerMinute))
        .append(" mV/min over ")
        .append(Setting.seconds(over));
    if (standardErrors != USUAL_STANDARD_ERRORS) {
      words.append(" with ").append(Setting.number(standardErrors)).append(" standard errors");
    }
    if (atLeast != USUAL_READINGS) {
      words.append(" of ").append(atLeast).append(" readings at least");
    }
    return words.toString();
  }

  @Override
  public double restBandMillivolts(double slopeMillivoltsPerDecade) {
    return BAND_WAYS * wayMillivolts();
  }
}
