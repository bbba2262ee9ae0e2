package org.restpoint.stability.rest;

import java.util.OptionalDouble;

/**
 * How fast a potential moves: the slope of a least-squares line through a window of readings.
 *
 * <pre>
 *   d    = Stv/Stt                      mV/min
 *   u(d) = √(s²/Stt)                    mV/min
 *   s²   = (Svv − Stv²/Stt)/(n − 2)     mV²
 * </pre>
 *
 * Stt, Stv, Svv are the sums of squares and products about the means of the times t in min and of
 * the potentials v in mV.
 *
 * <p>The standard error takes the scatter about the line for white noise. Noise that hangs together
 * from reading to reading makes it too small, so a creep is then flagged too often rather than too
 * seldom.
 *
 * <p>Edge results: fewer than two instants have no drift; fewer than three readings have a drift
 * without a standard error, and no creep is told from it.
 *
 * <p>Reference: N. R. Draper, H. Smith, Applied Regression Analysis, 3rd edition, Wiley 1998,
 * chapter 1.
 *
 * @param millivoltsPerMinute d
 * @param standardErrorMillivoltsPerMinute u(d), 0 or above
 */
public record Drift(double millivoltsPerMinute, OptionalDouble standardErrorMillivoltsPerMinute) {

  /**
   * How far ahead a drift is projected, in min: about as long as a sample stays at the electrode
   * when a reading is taken twice. Our choice.
   */
  public static final double HORIZON_MINUTES = 5;

  /**
   * Standard errors a drift must exceed before it is held to be one: of white noise alone and many
   * readings about one window in twenty does.
   */
  private static final double STANDARD_ERRORS = 2;

  /**
   * Whether it is a creep that a tolerance has let through: {@code |d|·5 min > w} and {@code |d| >
   * 2·u(d)}.
   *
   * @param toleranceMillivolts w, 0 or above
   */
  public boolean creeps(double toleranceMillivolts) {
    double size = Math.abs(millivoltsPerMinute);
    return standardErrorMillivoltsPerMinute.isPresent()
        && size * HORIZON_MINUTES > toleranceMillivolts
        && size > STANDARD_ERRORS * standardErrorMillivoltsPerMinute.getAsDouble();
  }
}
