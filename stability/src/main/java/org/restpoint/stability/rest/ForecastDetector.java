package org.restpoint.stability.rest;

import java.util.List;
import java.util.Optional;
import org.restpoint.stability.rest.forecast.Forecast;
import org.restpoint.stability.rest.forecast.Forecaster;
import org.restpoint.stability.rest.forecast.ResponseSeen;

/**
 * {@link ForecastRule} at work. Spread and drift are those of the last 15 to 30 s, or of the last
 * two readings where these are further apart.
 */
public final class ForecastDetector implements RestDetector {

  private static final int FEWEST = 8;
  private static final double EARLIEST_SECONDS = 8;
  private static final long HALF_NANOS = 15_000_000_000L;

  private final double within;
  private final Forecaster forecaster;
  private Moments recent = new Moments();
  private Moments before = new Moments();
  private final Moments window = new Moments();
  private final Moments reading = new Moments();
  private long taken;
  private double latest;

  ForecastDetector(double within, Forecaster forecaster) {
    this.within = within;
    this.forecaster = forecaster;
  }

  @Override
  public boolean accept(long nanos, double millivolts) {
    forecaster.accept(nanos, millivolts);
    taken++;
    latest = millivolts;
    if (!forecaster.isAside()) {
      see(nanos, millivolts);
    }
    return atRest();
  }

  private void see(long nanos, double millivolts) {
    if (forecaster.isAnew()) {
      recent.clear();
      before.clear();
    }
    if (recent.count() > 0 && nanos - recent.firstNanos() >= HALF_NANOS) {
      Moments oldest = before;
      before = recent;
      recent = oldest;
      recent.clear();
    }
    reading.set(nanos, millivolts);
    recent.append(reading);
  }

  private boolean atRest() {
    return !forecaster.isAside()
        && forecaster.readings() >= FEWEST
        && forecaster.seconds() >= Math.max(EARLIEST_SECONDS, forecaster.knownFromSeconds())
        && forecaster.asideShare() <= ForecastRule.MOST_ASIDE
        && forecaster.scatterMillivolts() <= ForecastRule.MOST_SCATTER * within
        && ForecastRule.COVERAGE * forecaster.standardUncertaintyMillivolts() <= within;
  }

  private Moments window() {
    window.set(before);
    window.append(recent);
    return window;
  }

  @Override
  public RestProgress progress() {
    if (taken == 0) {
      throw new IllegalStateException("no reading yet");
    }
    Moments seen = window();
    return new RestProgress(
        atRest(),
        taken,
        latest,
        seen.spread(),
        seen.drift(),
        false,
        forecaster.forecast(),
        List.of());
  }

  /** Never creeping: what is still to come is in the forecast and in its uncertainty. */
  @Override
  public RestingPotential potential() {
    if (!atRest()) {
      throw new IllegalStateException("not at rest");
    }
    Forecast forecast = forecaster.forecast().orElseThrow();
    Moments seen = window();
    return new RestingPotential(
        forecast.millivolts(),
        forecast.standardUncertaintyMillivolts(),
        true,
        seen.spread(),
        seen.drift(),
        false);
  }

  /** What the readings so far have told of the electrode's response; empty without a forecast. */
  public Optional<ResponseSeen> response() {
    return forecaster.response();
  }
}
