package org.restpoint.stability.rest;

/**
 * A rule that says when a potential is at rest. It is the same for all electrodes; a tolerance in
 * per cent becomes one in mV on the slope of the electrode at hand. Where no calibration is in
 * force, the ion's ideal slope stands in.
 */
public sealed interface RestRule permits ConsecutiveRule, DriftRule, ForecastRule, AllOf, AnyOf {

  /**
   * A detector at its beginning; all memory it will ever need is taken here.
   *
   * @param slopeMillivoltsPerDecade the electrode's slope, of either sign, not 0
   */
  RestDetector detector(double slopeMillivoltsPerDecade);

  /**
   * The rule and its settings in a few words, for results: {@code consecutive 10 within 0.1 mV}.
   */
  String describe();

  /**
   * How far a potential may move from where it rested and still be at rest, in mV: what tells a
   * stream that its electrode has left its rest.
   *
   * @param slopeMillivoltsPerDecade the electrode's slope, of either sign, not 0
   */
  double restBandMillivolts(double slopeMillivoltsPerDecade);
}
