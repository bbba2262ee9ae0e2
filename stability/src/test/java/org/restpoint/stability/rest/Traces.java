package org.restpoint.stability.rest;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/** Invented traces of a potential. */
final class Traces {

  static final long SECOND = 1_000_000_000L;

  /** The ideal slope of a monovalent cation at 25 °C. */
  static final double SLOPE = 59.16;

  private Traces() {}

  /** An electrode that sets out 40 mV from its rest with a time constant of 20 s. */
  static double approach(double seconds) {
    return 150 + 40 * Math.exp(-seconds / 20);
  }

  /** Instants so many ms apart, over ten minutes. */
  static List<Long> every(long millis) {
    List<Long> nanos = new ArrayList<>();
    for (long at = 0; at <= 600_000; at += millis) {
      nanos.add(at * 1_000_000);
    }
    return nanos;
  }

  /** Instants 50 to 500 ms apart, over ten minutes. */
  static List<Long> unevenly(long seed) {
    Random random = new Random(seed);
    List<Long> nanos = new ArrayList<>();
    for (long at = 0; at <= 600_000; at += 50 + random.nextInt(451)) {
      nanos.add(at * 1_000_000);
    }
    return nanos;
  }

  /** When a rule first holds, in s; infinite when it never does. */
  static double decision(RestRule rule, List<Long> nanos, DoubleUnaryOperator trace) {
    RestDetector detector = rule.detector(SLOPE);
    for (long at : nanos) {
      if (detector.accept(at, trace.applyAsDouble(at / 1e9))) {
        return at / 1e9;
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  /** Gives a detector readings a second apart; whether the last of them is at rest. */
  static boolean feed(RestDetector detector, double... millivolts) {
    boolean rest = false;
    for (int i = 0; i < millivolts.length; i++) {
      rest = detector.accept(i * SECOND, millivolts[i]);
    }
    return rest;
  }
}
