package org.restpoint.stability.rest;

import org.restpoint.stability.fit.StudentT;

/**
 * Whether a potential that lies within a tolerance w will leave it by going on as it does.
 *
 * <pre>
 *   M = |d|·H                                 where no slowing shows
 *   M = |d|·e^(−r·c)·(1 − e^(−r·H))/r         where the potential slows down
 *   r = ln(d₀/d)/Δ
 * </pre>
 *
 * d is the {@linkplain Drift drift} of the window, c the time from the middle of the window to its
 * end, H = 5 min; d₀ is the drift of a window before it, Δ the time between the middles of both. It
 * creeps where {@code |d| > t·u(d)} and M exceeds w, t the 97.5 % quantile of Student's
 * distribution with n − 2 degrees of freedom.
 *
 * <p>It slows down where d₀ has the sign of d and {@code |d₀| − |d| > t·√(u²(d₀) + u²(d))}, t of
 * the window with fewer readings. An electrode that comes to rest moves most when the tolerance has
 * just been met, and then hardly any more; a straight projection alone would call every one of them
 * creeping, and a flag on everything says nothing.
 *
 * <p>Noise that hangs together from reading to reading makes the standard error too small: a creep
 * is then flagged too often rather than too seldom.
 *
 * <p>Edge results: fewer than three readings do not creep; without a window before it, or one of
 * fewer than three readings, no slowing shows. A slow creep beneath a fast approach, or one that
 * slows down less and less (diffusion into a membrane), is projected too short while the fast part
 * lasts: let the rule look later, or over a longer span.
 */
final class Creep {

  /**
   * H: about as long as a sample stays at the electrode when a reading is taken twice. Our choice.
   */
  static final double HORIZON_MINUTES = 5;

  /** One white noise in twenty passes for a drift. */
  private static final double LEVEL = 0.975;

  private static final double NANOS_PER_MINUTE = 60e9;
  private static final int FEWEST_READINGS = 3;

  private Creep() {}

  /**
   * Whether it creeps.
   *
   * @param before readings before the window, none of them in it; may be none
   * @param window the readings that lie within the tolerance
   * @param toleranceMillivolts w
   */
  static boolean leaves(Moments before, Moments window, double toleranceMillivolts) {
    return window.count() >= FEWEST_READINGS
        && window.hasSlope()
        && Math.abs(window.slope()) > student(window.count()) * window.slopeStandardError()
        && movementMillivolts(before, window) > toleranceMillivolts;
  }

  private static double student(long readings) {
    return new StudentT(readings - 2).quantile(LEVEL);
  }

  /** M, in mV. */
  static double movementMillivolts(Moments before, Moments window) {
    double drift = Math.abs(window.slope());
    if (!slowsDown(before, window)) {
      return drift * HORIZON_MINUTES;
    }
    double apart = (window.middleNanos() - before.middleNanos()) / NANOS_PER_MINUTE;
    double rate = Math.log(Math.abs(before.slope()) / drift) / apart;
    double toEnd = window.spanMinutes() - window.middleMinutes();
    return drift * Math.exp(-rate * toEnd) * -Math.expm1(-rate * HORIZON_MINUTES) / rate;
  }

  private static boolean slowsDown(Moments before, Moments window) {
    if (before.count() < FEWEST_READINGS
        || !before.hasSlope()
        || before.slope() * window.slope() <= 0) {
      return false;
    }
    double error = Math.hypot(before.slopeStandardError(), window.slopeStandardError());
    return Math.abs(before.slope()) - Math.abs(window.slope())
        > student(Math.min(before.count(), window.count())) * error;
  }
}
