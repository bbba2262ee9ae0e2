package org.restpoint.stability.benchmark;

import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.restpoint.stability.rest.AllOf;
import org.restpoint.stability.rest.AnyOf;
import org.restpoint.stability.rest.ConsecutiveRule;
import org.restpoint.stability.rest.DriftRule;
import org.restpoint.stability.rest.ForecastRule;
import org.restpoint.stability.rest.RestDetector;
import org.restpoint.stability.rest.RestRule;
import org.restpoint.stability.rest.Tolerance;

/**
 * One thread, one reading given to the detector of each rule; it is asked whether it rests and goes
 * on. Readings come each second, white noise of 0.05 mV in steps of 0.01 mV (invented), so that the
 * window of a minute holds 61 of them.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class RestRuleBenchmark {

  private static final int TRACE = 16_384;
  private static final long SECOND = 1_000_000_000L;
  private static final double SLOPE = 59.16;

  private static final RestRule CONSECUTIVE = new ConsecutiveRule(10, 0.1);
  private static final RestRule DRIFT = new DriftRule(0.2, Duration.ofMinutes(1));

  /** Which rule takes the readings. */
  public enum Kind {
    /** Ten readings. */
    CONSECUTIVE,
    /** All readings of a minute, ten at least. */
    CONSECUTIVE_FOR_A_MINUTE,
    /** The slope over a minute. */
    DRIFT,
    /** The slope over two hours: more readings than the window has places. */
    DRIFT_OVER_TWO_HOURS,
    /** Where the potential is going. */
    FORECAST,
    /** Ten readings and the slope over a minute. */
    ALL_OF,
    /** The same, either. */
    ANY_OF;

    private RestRule rule() {
      return switch (this) {
        case CONSECUTIVE -> RestRuleBenchmark.CONSECUTIVE;
        case CONSECUTIVE_FOR_A_MINUTE ->
            new ConsecutiveRule(10, new Tolerance.ConcentrationPercent(1), Duration.ofMinutes(1));
        case DRIFT -> RestRuleBenchmark.DRIFT;
        case DRIFT_OVER_TWO_HOURS -> new DriftRule(0.2, Duration.ofHours(2));
        case FORECAST -> new ForecastRule(1);
        case ALL_OF -> new AllOf(List.of(RestRuleBenchmark.CONSECUTIVE, RestRuleBenchmark.DRIFT));
        case ANY_OF -> new AnyOf(List.of(RestRuleBenchmark.CONSECUTIVE, RestRuleBenchmark.DRIFT));
      };
    }
  }

  /** The rule. */
  @Param public Kind kind = Kind.CONSECUTIVE;

  private final double[] trace = new double[TRACE];
  private RestDetector detector = CONSECUTIVE.detector(SLOPE);
  private long nanos;
  private int next;

  /** Draws the trace and begins. */
  @Setup
  public void begin() {
    Random random = new Random(1);
    for (int i = 0; i < TRACE; i++) {
      trace[i] = Math.rint(5 * random.nextGaussian()) / 100;
    }
    detector = kind.rule().detector(SLOPE);
    nanos = 0;
    next = 0;
  }

  /** One reading. */
  @Benchmark
  public boolean oneReading() {
    next = next + 1 == TRACE ? 0 : next + 1;
    nanos += SECOND;
    return detector.accept(nanos, trace[next]);
  }
}
