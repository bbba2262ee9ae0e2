package org.restpoint.stability.benchmark;

import java.time.Duration;
import java.time.Instant;
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
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.restpoint.stability.reading.Reading;
import org.restpoint.stability.rest.ConsecutiveRule;
import org.restpoint.stability.rest.SettleLimits;
import org.restpoint.stability.rest.Settling;
import org.restpoint.stability.rest.Settling.Stage;

/**
 * One thread, from a parsed reading to the decision; one operation is one reading.
 *
 * <p>The trace is invented: every 512 readings the potential sets out for another level, 40 mV up
 * or down, and creeps there with a time constant of 40 readings, under white noise of 0.05 mV and a
 * resolution of 0.01 mV. With the tight tolerance no ten readings are ever alike, so the detector
 * never gets to stop; with the wide one it comes to rest after each step and a new wait begins at
 * once, so the detectors it takes are counted in.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class SettlingBenchmark {

  private static final int TRACE = 16_384;
  private static final int STEP = 512;

  /** Whether the trace ever comes to rest. */
  public enum Outcome {
    /** No window of the trace is within the tolerance. */
    NEVER_AT_REST(0.01),
    /** It comes to rest after each step. */
    COMES_TO_REST(0.5);

    private final double withinMillivolts;

    Outcome(double withinMillivolts) {
      this.withinMillivolts = withinMillivolts;
    }
  }

  /** How many readings are to be alike. */
  @Param({"10", "300"})
  public int readings;

  /** Which tolerance they are held to. */
  @Param public Outcome outcome = Outcome.NEVER_AT_REST;

  private final Reading[] trace = new Reading[TRACE];
  private final SettleLimits limits = new SettleLimits(Duration.ZERO, Duration.ofDays(365));
  private ConsecutiveRule rule = new ConsecutiveRule(2, 0);
  private Settling settling = new Settling(rule.detector(59.16), limits, 0);
  private long lapNanos;
  private int next;

  /** Draws the trace and begins the first wait. */
  @Setup
  public void begin() {
    Random random = new Random(1);
    for (int i = 0; i < TRACE; i++) {
      double level = i / STEP % 2 == 0 ? 40 : 0;
      double from = 40 - level;
      double potential =
          level + (from - level) * Math.exp(-(i % STEP) / 40.0) + 0.05 * random.nextGaussian();
      Instant time = Instant.EPOCH.plusMillis(i);
      trace[i] = Reading.of(time, Math.rint(potential * 100) / 100, 22.5);
    }
    rule = new ConsecutiveRule(readings, outcome.withinMillivolts);
    settling = new Settling(rule.detector(59.16), limits, 0);
    lapNanos = 0;
    next = 0;
  }

  /** One reading. */
  @Benchmark
  public Stage oneReading() {
    Reading reading = trace[next];
    Instant time = reading.time();
    long nanos = lapNanos + time.getEpochSecond() * 1_000_000_000 + time.getNano();
    Stage stage = settling.accept(nanos, reading.millivolts().getAsDouble());
    if (stage != Stage.WAITING) {
      settling = new Settling(rule.detector(59.16), limits, nanos);
    }
    next++;
    if (next == TRACE) {
      next = 0;
      lapNanos += TRACE * 1_000_000L;
    }
    return stage;
  }

  /** Runs it and prints nanoseconds and bytes for each reading. */
  public static void main(String[] arguments) throws RunnerException {
    new Runner(
            new OptionsBuilder()
                .include(SettlingBenchmark.class.getName())
                .include(RestRuleBenchmark.class.getName())
                .addProfiler(GCProfiler.class)
                .build())
        .run();
  }
}
