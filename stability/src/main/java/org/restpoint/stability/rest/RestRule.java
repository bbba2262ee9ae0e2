package org.restpoint.stability.rest;

/** A rule that says when a potential is at rest. */
public sealed interface RestRule permits ConsecutiveRule {

  /** A detector at its beginning; all memory it will ever need is taken here. */
  RestDetector detector();

  /**
   * The rule and its settings in a few words, for results: {@code consecutive 10 within 0.1 mV}.
   */
  String describe();

  /**
   * How far a potential may move from where it rested and still be at rest, in mV: what tells a
   * stream that its electrode has left its rest.
   */
  double restBandMillivolts();
}
