package org.restpoint.stability.settle1;

import java.time.Duration;
import java.util.List;
import java.util.function.DoubleFunction;
import org.restpoint.stability.rest.RestDetector;
import org.restpoint.stability.rest.RestRule;
import org.restpoint.stability.rest.RestingPotential;
import org.restpoint.stability.rest.SettleLimits;
import org.restpoint.stability.rest.Settling;
import org.restpoint.stability.rest.Settling.Stage;

/**
 * A rule with a name, fed as the service feeds it: from the step on, no decision too early, given
 * up after {@value Settle1#SECONDS} s.
 *
 * @param name its name in tables
 * @param detectors gives a detector at its beginning for an electrode's slope in mV/decade
 */
public record Candidate(String name, DoubleFunction<RestDetector> detectors) {

  private static final long SECOND = 1_000_000_000L;
  private static final SettleLimits LIMITS =
      new SettleLimits(Duration.ZERO, Duration.ofSeconds(Settle1.SECONDS));

  /** A rule as it stands. */
  public static Candidate of(String name, RestRule rule) {
    return new Candidate(name, rule::detector);
  }

  /** A rule that names itself. */
  public static Candidate of(RestRule rule) {
    return of(rule.describe(), rule);
  }

  /** The same rule on the medians of three readings. */
  public Candidate onMediansOfThree() {
    return new Candidate(
        name + ", medians of 3", slope -> new MedianOfThree(detectors.apply(slope)));
  }

  /** What it makes of a curve, as if calibrated: it is told the electrode's slope. */
  public Decision decide(Curve curve) {
    RestDetector detector = detectors.apply(curve.slopeMillivoltsPerDecade());
    Settling settling = new Settling(detector, LIMITS, 0);
    Trace trace = curve.trace();
    for (int t = 0; t < trace.seconds(); t++) {
      if (settling.accept(t * SECOND, trace.millivoltsAt(t)) == Stage.AT_REST) {
        RestingPotential rest = settling.potential();
        double error = rest.millivolts() - curve.truthAt(t);
        return new Decision.Settled(t, error, rest.standardUncertaintyMillivolts());
      }
    }
    return new Decision.Never();
  }

  /** What it makes of some curves, in their order, on all processors. */
  public List<Decision> decide(List<Curve> curves) {
    return curves.parallelStream().map(this::decide).toList();
  }
}
