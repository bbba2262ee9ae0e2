package org.restpoint.config.station;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * How an electrode is calibrated.
 *
 * @param standards names of the standards it may be given, at least one
 * @param restandardize the standard that is read again between samples, if any
 * @param every how often it is read again
 * @param slopePercentLow lowest slope accepted, % of the ideal slope
 * @param slopePercentHigh highest slope accepted, % of the ideal slope
 * @param validFor how long a calibration may be used without a flag
 */
public record Calibrate(
    List<String> standards,
    Optional<String> restandardize,
    Every every,
    double slopePercentLow,
    double slopePercentHigh,
    Duration validFor) {

  /** Copies the standards and checks that there is one, and the order of the slope's limits. */
  public Calibrate {
    standards = List.copyOf(standards);
    if (standards.isEmpty()) {
      throw new IllegalArgumentException("a calibration needs a standard");
    }
    if (!(0 < slopePercentLow && slopePercentLow < slopePercentHigh)
        || !Double.isFinite(slopePercentHigh)) {
      throw new IllegalArgumentException(
          "slope limits out of order: " + slopePercentLow + ".." + slopePercentHigh);
    }
  }

  /** How often the standard is read again. */
  public sealed interface Every {

    /** Never asked for. */
    record Never() implements Every {}

    /**
     * After so many samples.
     *
     * @param samples 1 for before every sample
     */
    record Samples(int samples) implements Every {

      /** Checks the number. */
      public Samples {
        if (samples < 1) {
          throw new IllegalArgumentException("after so many samples, at least 1: " + samples);
        }
      }
    }

    /**
     * After so long.
     *
     * @param span above zero
     */
    record Span(Duration span) implements Every {}
  }
}
