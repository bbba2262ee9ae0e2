package org.restpoint.acquisition.example;

import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/**
 * A recording with its instructions: the electrodes stand 44 s in each solution, or as long as is
 * said, and are rinsed for 16 s, and the meter shows every 2 s, to 0.01 mV, a potential with noise
 * of 0.02 mV (standard deviation).
 */
final class MadeRecording {

  static final Instant START = Instant.parse("2026-04-02T14:00:00Z");

  private static final Duration STAY = Duration.ofSeconds(44);
  private static final Duration RINSE = Duration.ofSeconds(16);
  private static final int READING_EVERY_SECONDS = 2;
  private static final double NOISE_MILLIVOLTS = 0.02;

  private final Random noise;
  private final StringBuilder rows = new StringBuilder("time,probe,millivolts,celsius\n");
  private final StringBuilder instructions = new StringBuilder();
  private Instant now = START;

  MadeRecording(long seed) {
    noise = new Random(seed);
  }

  /** Reads a standard. */
  MadeRecording calibrate(String standard, String probe, Trace trace, double celsius) {
    return calibrate(standard, Map.of(probe, trace), celsius);
  }

  /** Reads a standard with several electrodes at once, in the order of the map. */
  MadeRecording calibrate(String standard, Map<String, Trace> traces, double celsius) {
    String task = "\"do\":\"calibrate\",\"standard\":\"%s\"".formatted(standard);
    return move(task, traces, celsius, STAY);
  }

  /** Reads a sample. */
  MadeRecording measure(String sample, String probe, Trace trace, double celsius) {
    return move(
        "\"do\":\"measure\",\"sample\":\"%s\"".formatted(sample),
        Map.of(probe, trace),
        celsius,
        STAY);
  }

  /** Reads a sample with several electrodes at once, and leaves them in it for so long. */
  MadeRecording measure(String sample, Map<String, Trace> traces, double celsius, Duration stay) {
    return move("\"do\":\"measure\",\"sample\":\"%s\"".formatted(sample), traces, celsius, stay);
  }

  /** Reads a standard as if it were a sample. */
  MadeRecording verify(String standard, String probe, Trace trace, double celsius) {
    return move(
        "\"do\":\"verify\",\"role\":\"check-standard\",\"standard\":\"%s\"".formatted(standard),
        Map.of(probe, trace),
        celsius,
        STAY);
  }

  private MadeRecording move(
      String task, Map<String, Trace> traces, double celsius, Duration stay) {
    traces
        .keySet()
        .forEach(
            probe ->
                instructions.append(
                    "{\"time\":\"%s\",\"probe\":\"%s\",%s}\n".formatted(now, probe, task)));
    for (int seconds = READING_EVERY_SECONDS;
        seconds <= stay.toSeconds();
        seconds += READING_EVERY_SECONDS) {
      for (Map.Entry<String, Trace> trace : traces.entrySet()) {
        double millivolts =
            trace.getValue().millivolts(seconds) + NOISE_MILLIVOLTS * noise.nextGaussian();
        rows.append(
            String.format(
                Locale.ROOT,
                "%s,%s,%.2f,%.1f\n",
                now.plusSeconds(seconds),
                trace.getKey(),
                millivolts,
                celsius));
      }
    }
    now = now.plus(stay).plus(RINSE);
    return this;
  }

  /** Time goes by while nobody reads. */
  MadeRecording meanwhile(Duration span) {
    now = now.plus(span);
    return this;
  }

  /** The recording as it stands in its file. */
  String recording() {
    return rows.toString();
  }

  /** The instructions as they stand in theirs. */
  String instructions() {
    return instructions.toString();
  }
}
