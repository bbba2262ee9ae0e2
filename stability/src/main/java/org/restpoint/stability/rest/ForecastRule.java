package org.restpoint.stability.rest;

import org.restpoint.stability.rest.forecast.Forecaster;
import org.restpoint.stability.rest.forecast.ResponsePrior;

/**
 * The potential's rest is known before it is reached: response curves are fitted to the readings,
 * and their mean foretells it.
 *
 * <pre>
 *   at rest    when 2·u(E) ≤ w
 *   E, u(E)   forecast and its standard uncertainty, see {@link Forecaster}
 * </pre>
 *
 * <p>The other rules bound how fast the potential moves, not what is left to come: a slow electrode
 * they let go too early, a noisy one never. This one asks what is left. The published potential is
 * the forecast, not a reading, and says so; u(E) holds the noise, how far the curves disagree, a
 * part of the way still to go (so that the slope has to confirm the forecast: no more than 7·w may
 * be left), how far the forecast moved of late, and the resolution.
 *
 * <p>Twice the standard uncertainty covers about 95 % (JCGM 100:2008, 6.3.3). Of 10 000 invented
 * responses one in a hundred was off by more than w = 1 mV, nearly all of them where a small slow
 * part still hid behind a large fast one. Responses that are like none of the curves are foretold
 * worse: powers of the time that go on for hours most of all, one in ten.
 *
 * <p>Not at rest: with fewer than eight readings, earlier than 8 s after the electrode set out (the
 * fastest curve has a time constant of 1 s, and the first readings show little but noise), with a
 * reading that is off, with more than a fifth of the readings off, with readings that scatter by
 * more than 3·w, and, after a disturbance, before it has been seen for twice as long as before.
 *
 * @param within w, in mV or in per cent of the concentration; above 0
 */
public record ForecastRule(Tolerance within) implements RestRule {

  /** Standard uncertainties that are to lie within w. */
  static final double COVERAGE = 2;

  /**
   * Tolerances by which single readings may scatter: of more than that the mean may be known, but
   * nobody would call it a potential at rest. Our choice.
   */
  static final double MOST_SCATTER = 3;

  /** Part of the readings that may be put aside as spikes: more are no spikes. Our choice. */
  static final double MOST_ASIDE = 0.2;

  /**
   * Tolerances a potential may move from its rest: 7 that may be left of the way when it is
   * foretold, and one for the noise of single readings. Our choice.
   */
  private static final double BAND_TOLERANCES = 8;

  /** The rule in mV. */
  public ForecastRule(double withinMillivolts) {
    this(new Tolerance.Millivolts(withinMillivolts));
  }

  public ForecastRule {
    if (!(within.onSlope(1) > 0)) {
      throw new IllegalArgumentException(
          "a forecast is never exact: its tolerance is above 0, not " + within.describe());
    }
  }

  @Override
  public RestDetector detector(double slopeMillivoltsPerDecade) {
    return detector(slopeMillivoltsPerDecade, ResponsePrior.uninformed());
  }

  /**
   * A detector for an electrode whose response is known from before.
   *
   * @param slopeMillivoltsPerDecade the electrode's slope, of either sign, not 0
   * @param prior what is known
   */
  public ForecastDetector detector(double slopeMillivoltsPerDecade, ResponsePrior prior) {
    return new ForecastDetector(
        within.onSlope(slopeMillivoltsPerDecade), new Forecaster(slopeMillivoltsPerDecade, prior));
  }

  @Override
  public String describe() {
    return "forecast within " + within.describe();
  }

  @Override
  public double restBandMillivolts(double slopeMillivoltsPerDecade) {
    return BAND_TOLERANCES * within.onSlope(slopeMillivoltsPerDecade);
  }
}
