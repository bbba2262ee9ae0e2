package org.restpoint.stability.rest;

import java.util.List;
import java.util.Optional;

/** {@link ConsecutiveRule} with a least span at work. */
final class SpanDetector implements RestDetector {

  private final double within;
  private final SlidingWindow window;
  private final Moments before = new Moments();
  private final Moments candidate = new Moments();

  SpanDetector(int readings, double within, long spanNanos) {
    this.within = within;
    this.window = new SlidingWindow(readings, spanNanos);
  }

  @Override
  public boolean accept(long nanos, double millivolts) {
    window.take(nanos, millivolts);
    keepBefore(window.readings());
    return atRest();
  }

  /** The last window but one that has no reading in common with the present one. */
  private void keepBefore(Moments present) {
    if (candidate.count() == 0 || candidate.lastNanos() < present.firstNanos()) {
      before.set(candidate);
      candidate.set(present);
    }
  }

  private boolean atRest() {
    double most = within + ConsecutiveDetector.ROUNDING_MILLIVOLTS;
    return window.isFull() && window.readings().spread() <= most;
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
        Creep.leaves(before, seen, within),
        Optional.empty(),
        List.of());
  }

  @Override
  public RestingPotential potential() {
    if (!atRest()) {
      throw new IllegalStateException("not at rest");
    }
    Moments seen = window.readings();
    double uncertainty = Math.sqrt(seen.varianceOfMean() + within * within / 3);
    return new RestingPotential(
        seen.meanMillivolts(),
        uncertainty,
        false,
        seen.spread(),
        seen.drift(),
        Creep.leaves(before, seen, within));
  }
}
