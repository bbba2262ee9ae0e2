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
public record Drift(double millivoltsPerMinute, OptionalDouble standardErrorMillivoltsPerMinute) {}
