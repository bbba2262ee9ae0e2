package org.restpoint.stability.rest;

import java.util.List;
import java.util.Optional;

/** {@link DriftRule} at work. */
final class DriftDetector implements RestDetector {

  /** A drift of exactly the limit is within it, whatever the rounding of the last bits. */
  private static final double ROUNDING_MILLIVOLTS_PER_MINUTE = 1e-9;

  private final DriftRule rule;
  private final long longestPauseNanos;
  private final SlidingWindow window;

  DriftDetector(DriftRule rule) {
    this.rule = rule;
    this.longestPauseNanos = rule.over().toNanos() / 2;
    this.window = new SlidingWindow(1, rule.over().toNanos());
  }

  @Override
  public boolean accept(long nanos, double millivolts) {
    window.take(nanos, millivolts);
    return atRest();
  }

  private boolean atRest() {
    Moments seen = window.readings();
    if (!window.isFull()
        || seen.count() < rule.atLeast()
        || seen.longestPauseNanos() > longestPauseNanos
        || !seen.hasSlope()) {
      return false;
    }
    double bound = Math.abs(seen.slope()) + rule.standardErrors() * seen.slopeStandardError();
    return bound <= rule.limitMillivoltsPerMinute() + ROUNDING_MILLIVOLTS_PER_MINUTE;
  }

  @Override
  public RestProgress progress() {
    Moments seen = window.readings();
    if (seen.count() == 0) {
      throw new IllegalStateException("no reading yet");
    }
    return new RestProgress(
        atRest(),
        window.taken(),
        window.latestMillivolts(),
        seen.spread(),
        seen.drift(),
        false,
        Optional.empty(),
        List.of());
  }

  /** Never creeping: what the limit lets pass is in the uncertainty. */
  @Override
  public RestingPotential potential() {
    if (!atRest()) {
      throw new IllegalStateException("not at rest");
    }
    Moments seen = window.readings();
    double end = seen.spanMinutes();
    double way = rule.wayMillivolts();
    double uncertainty = Math.sqrt(seen.varianceOfLineAt(end) + way * way / 3);
    return new RestingPotential(
        seen.lineAt(end), uncertainty, false, seen.spread(), seen.drift(), false);
  }
}
