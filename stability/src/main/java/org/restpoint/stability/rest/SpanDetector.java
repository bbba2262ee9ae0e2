package org.restpoint.stability.rest;

import java.util.List;
import java.util.Optional;

/** {@link ConsecutiveRule} with a least span at work. */
final class SpanDetector implements RestDetector {

  private final double within;
  private final SlidingWindow window;

  SpanDetector(int readings, double within, long spanNanos) {
    this.within = within;
    this.window = new SlidingWindow(readings, spanNanos);
  }

  @Override
  public boolean accept(long nanos, double millivolts) {
    window.take(nanos, millivolts);
    return atRest();
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
        creeping(seen.drift()),
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
        creeping(seen.drift()));
  }

  private boolean creeping(Optional<Drift> drift) {
    return drift.isPresent() && drift.get().creeps(within);
  }
}
