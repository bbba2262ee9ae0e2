package org.restpoint.stability.rest.forecast;

import java.util.List;
import java.util.Optional;

/**
 * Foretells where a potential comes to rest, reading by reading.
 *
 * <p>A reading is held to what the likeliest curve of the last fit foretold of it. One that is off
 * by more than {@value #OUTLYING} times the scatter is put aside: if the next is back, it was a
 * spike and is dropped; if the next is off on the same side, something has happened to the
 * electrode (a bubble, a stir, another sample), and all begins anew with the two, so that nothing
 * is averaged across it. After that no rest is known before the electrode has been seen for twice
 * as long as before the disturbance: what was on its way then is on its way still.
 *
 * <p>After a pause of more than a quarter of the time a reading is taken as it is: nothing was
 * foretold so far ahead that it could be held to.
 *
 * <p>All curves are fitted again when the time since the step has grown by {@value #GROWTH}:
 * nothing about a response changes sooner. Between two fits the forecast stands.
 *
 * <pre>
 *   u²(E̅) = V + (c·(E̅ − y̅))² + (E̅ − E̅′)² + q²/12
 * </pre>
 *
 * V as in {@link ModelAverage}; y̅ the fitted potential now, so E̅ − y̅ is the way still to go, of
 * which no more than the part c of {@link ResponsePrior} is held to be foreseen wrong; E̅′ the mean
 * of the forecasts of late, over the last tenth of the time: a forecast that itself is on its way
 * is not known better than that; q the resolution.
 *
 * <p>Edge results: no forecast before {@value #FEWEST} readings. A step that came some seconds
 * before the first reading, or after it, is met by the exponentials, which look the same from any
 * origin, and by the disturbance that it is. State: 63 kB, taken at the beginning, of which 9 kB
 * are sums over the readings and the others the fit's own room. Not safe for several threads.
 */
public final class Forecaster {

  /** A pair has three parameters; two readings more. */
  private static final int FEWEST = 5;

  /** Of white noise one reading in two million is as far off; of spikes nearly all. */
  private static final double OUTLYING = 5;

  /** Part of the time since the step. Our choice. */
  private static final double LONGEST_PAUSE = 0.25;

  /**
   * At the most this much later than it could is rest called. Our choice, for the work it saves.
   */
  private static final double GROWTH = 1.04;

  /** Part of the time since the step. Our choice, tried from 0.05 to 0.6 on invented curves. */
  private static final double OF_LATE = 0.1;

  /** Times as long as before a disturbance. Our choice, tried from 0 to 3 on invented bubbles. */
  private static final double AS_LONG = 2;

  private final Shapes shapes = new Shapes();
  private final Noise noise = new Noise();
  private final ResponseFit fit;
  private final PriorTable prior;
  private boolean begun;
  private boolean anew;
  private long originNanos;
  private long lastNanos;
  private double firstMillivolts;
  private double lastMillivolts;
  private long readings;
  private double fittedSeconds;
  private double knownFromSeconds;
  private long spikes;
  private boolean aside;
  private long asideNanos;
  private double asideMillivolts;
  private double asideOff;
  private double rest;
  private double lateRest;
  private double uncertainty = Double.POSITIVE_INFINITY;

  /**
   * Begins.
   *
   * @param slopeMillivoltsPerDecade the electrode's slope, of either sign, not 0
   * @param prior what is known of the electrode
   */
  public Forecaster(double slopeMillivoltsPerDecade, ResponsePrior prior) {
    if (!Double.isFinite(slopeMillivoltsPerDecade) || slopeMillivoltsPerDecade == 0) {
      throw new IllegalArgumentException(
          "a slope is a finite number of mV/decade and not 0, not " + slopeMillivoltsPerDecade);
    }
    this.fit = new ResponseFit(slopeMillivoltsPerDecade);
    this.prior = new PriorTable(prior);
  }

  /**
   * Takes a reading.
   *
   * @param nanos when, not before the one before
   * @param millivolts the potential, finite
   */
  public void accept(long nanos, double millivolts) {
    if (!begun) {
      begun = true;
      begin(nanos, millivolts);
      lastMillivolts = millivolts;
    }
    noise.step(millivolts - lastMillivolts);
    lastMillivolts = millivolts;
    double seconds = since(nanos);
    double[] now = shapes.at(seconds);
    if (readings >= FEWEST && seconds - seconds() <= LONGEST_PAUSE * seconds) {
      double off = millivolts - firstMillivolts - fit.average().foretell(now);
      if (Math.abs(off) > OUTLYING * noise.scale()) {
        if (!aside || off * asideOff <= 0) {
          spikes++;
          aside = true;
          asideNanos = nanos;
          asideMillivolts = millivolts;
          asideOff = off;
          return;
        }
        beginAnew();
        now = shapes.at(since(nanos));
      } else {
        noise.take(off, (nanos - lastNanos) / 1e9);
      }
    }
    aside = false;
    take(nanos, millivolts, now);
  }

  private double since(long nanos) {
    return (nanos - originNanos) / 1e9;
  }

  private void begin(long nanos, double millivolts) {
    originNanos = nanos;
    lastNanos = nanos;
    firstMillivolts = millivolts;
    readings = 0;
    spikes = 0;
    fittedSeconds = 0;
    uncertainty = Double.POSITIVE_INFINITY;
    prior.beginAt(millivolts);
  }

  private void beginAnew() {
    anew = true;
    knownFromSeconds = AS_LONG * since(asideNanos);
    fit.clear();
    noise.clear();
    begin(asideNanos, asideMillivolts);
    take(asideNanos, asideMillivolts, shapes.at(0));
  }

  private void take(long nanos, double millivolts, double[] now) {
    double seconds = since(nanos);
    fit.add(seconds, millivolts - firstMillivolts, now);
    readings++;
    lastNanos = nanos;
    if (readings == FEWEST || (readings > FEWEST && seconds >= GROWTH * fittedSeconds)) {
      foretell(seconds, now);
    }
  }

  private void foretell(double seconds, double[] now) {
    fit.fit(noise, prior);
    rest = fit.average().restMillivolts();
    if (readings == FEWEST || !(seconds > fittedSeconds)) {
      lateRest = rest;
    } else {
      double kept = Math.pow(fittedSeconds / seconds, 1 / OF_LATE);
      lateRest = rest + kept * (lateRest - rest);
    }
    fittedSeconds = seconds;
    double way = prior.unforeseen() * (rest - fit.average().foretell(now));
    double moved = rest - lateRest;
    double variance = fit.average().variance();
    uncertainty = Math.sqrt(variance + way * way + moved * moved + noise.roundingVariance());
  }

  /** The forecast; empty before there is one. */
  public Optional<Forecast> forecast() {
    return readings < FEWEST
        ? Optional.empty()
        : Optional.of(new Forecast(firstMillivolts + rest, uncertainty));
  }

  /** u(E̅) in mV; infinite before there is a forecast. */
  public double standardUncertaintyMillivolts() {
    return uncertainty;
  }

  /** By how much single readings scatter about what was foretold of them, in mV. */
  public double scatterMillivolts() {
    return Math.sqrt(noise.variance());
  }

  /** The part of the readings that was put aside, since the electrode set out or was disturbed. */
  public double asideShare() {
    return spikes / (double) Math.max(1, readings + spikes);
  }

  /** Whether the latest reading was put aside. */
  public boolean isAside() {
    return aside;
  }

  /** Readings that the forecast rests on. */
  public long readings() {
    return readings;
  }

  /** How long the electrode has been seen for since it set out or was last disturbed, in s. */
  public double seconds() {
    return since(lastNanos);
  }

  /** Whether the latest reading told a disturbance: it and the one before it are the first anew. */
  public boolean isAnew() {
    return anew && readings == 2;
  }

  /** How long it has to be seen for after a disturbance, in s; 0 without one. */
  public double knownFromSeconds() {
    return knownFromSeconds;
  }

  /** What the readings have told of the electrode's response; empty before there is a forecast. */
  public Optional<ResponseSeen> response() {
    if (readings < FEWEST) {
      return Optional.empty();
    }
    List<Double> weights = ResponsePrior.curveWeights(fit.average().weights());
    return Optional.of(new ResponseSeen(firstMillivolts + rest, rest > 0, seconds(), weights));
  }
}
