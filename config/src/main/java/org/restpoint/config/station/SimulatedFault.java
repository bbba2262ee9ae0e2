package org.restpoint.config.station;

import java.time.Duration;
import java.util.Optional;

/**
 * Something that goes wrong on a simulated link, and when.
 *
 * @param kind what
 * @param at from when, since the link's start
 * @param span how long; empty for good
 * @param every how often it comes again, from beginning to beginning; empty for once
 */
public record SimulatedFault(
    Kind kind, Duration at, Optional<Duration> span, Optional<Duration> every) {

  /** What goes wrong. */
  public sealed interface Kind {}

  /** Open, but nothing is sent. */
  public record Silent() implements Kind {}

  /** Pulled out. */
  public record Unplugged() implements Kind {}

  /**
   * Too many readings.
   *
   * @param times how many in an interval
   */
  public record Flood(int times) implements Kind {}

  /**
   * The electrode is not connected.
   *
   * @param potentialMillivolts about what the potential wanders, in mV
   * @param wanderMillivolts standard deviation of its wandering, in mV
   */
  public record OpenCircuit(double potentialMillivolts, double wanderMillivolts) implements Kind {}

  /**
   * Single readings far off.
   *
   * @param sizeMillivolts how far, in mV, either way
   * @param sharePercent how many of the readings, in %
   */
  public record Spikes(double sizeMillivolts, double sharePercent) implements Kind {}

  /**
   * More white noise.
   *
   * @param noiseMillivolts its standard deviation, in mV
   */
  public record NoiseBurst(double noiseMillivolts) implements Kind {}

  /**
   * An air bubble before the membrane.
   *
   * @param jumpMillivolts by how much the potential jumps, in mV
   * @param slower how many times slower it responds
   */
  public record AirBubble(double jumpMillivolts, double slower) implements Kind {}

  /**
   * A coat on the membrane.
   *
   * @param slower how many times slower it responds
   */
  public record CoatedMembrane(double slower) implements Kind {}

  /**
   * The offset jumps.
   *
   * @param jumpMillivolts by how much, in mV
   */
  public record OffsetJump(double jumpMillivolts) implements Kind {}
}
