package org.restpoint.stability.move;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Invented potentials of an electrode that stands in one cup, and may be moved into the next. In a
 * cup it goes on creeping by some mV, drifts, is noisy and now and then spikes; in air it wanders,
 * picks up the mains, or sits at the end of the meter's range; in the next cup it answers within
 * some seconds.
 */
final class MadeMoves {

  private static final double SPIKES = 0.005;

  private final Random random;
  private final double interval;
  private final List<Double> seconds = new ArrayList<>();
  private final List<Double> millivolts = new ArrayList<>();
  private final double noise;
  private double now;
  private double level;

  MadeMoves(long seed, double intervalSeconds) {
    random = new Random(seed);
    interval = intervalSeconds;
    noise = between(0.05, 0.3);
    level = between(-100, 250);
  }

  private double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  /** Stands in its cup: it creeps on by up to 8 mV and drifts by up to 10 mV/h. */
  MadeMoves stay(double span) {
    double begin = now;
    double creep = between(-8, 8);
    double tau = between(15, 40);
    double drift = between(-10, 10) / 3600;
    double from = level;
    while (now < begin + span) {
      double t = now - begin;
      level = from + creep * -Math.expm1(-t / tau) + drift * t;
      add(level + spike());
    }
    return this;
  }

  private double spike() {
    return random.nextDouble() < SPIKES ? (random.nextBoolean() ? 1 : -1) * between(30, 150) : 0;
  }

  /** A bubble sits down on the membrane: the potential jumps, and comes back when it is gone. */
  MadeMoves bubble(double span) {
    double from = level;
    double jump = between(-35, -15);
    answer(from + jump, span, 1);
    answer(from, 60, 5);
    return this;
  }

  /** Somebody stirs: some seconds of noise. */
  MadeMoves stirred(double span) {
    double begin = now;
    while (now < begin + span) {
      add(level + 3 * random.nextGaussian());
    }
    return this;
  }

  /** Through the air, as one of three kinds of meter shows it, into a cup that differs by this. */
  MadeMoves move(double step) {
    double begin = now;
    double span = between(4, 12);
    int kind = random.nextInt(3);
    double mean = between(-300, 300);
    double sd = between(30, 200);
    double wander = 0;
    while (now < begin + span) {
      wander = 0.7 * wander + sd * random.nextGaussian();
      add(
          switch (kind) {
            case 0 -> mean + sd * random.nextGaussian();
            case 1 -> mean + wander;
            default -> 1999.9;
          });
    }
    return answer(level + step, between(40, 60), 1);
  }

  /** Into a cup that differs by this, so wet that the meter never sees the air. */
  MadeMoves moveUnseen(double step) {
    return answer(level + step, between(40, 60), 1);
  }

  private MadeMoves answer(double to, double span, double slower) {
    double begin = now;
    double from = level;
    double tau = between(2, 8) * slower;
    while (now < begin + span) {
      level = to + (from - to) * Math.exp(-(now - begin) / tau);
      add(level + spike());
    }
    return this;
  }

  private void add(double value) {
    seconds.add(now);
    millivolts.add(value + noise * random.nextGaussian());
    now += interval;
  }

  /** The time of the next reading, in s. */
  double now() {
    return now;
  }

  /**
   * When moves are told, in s.
   *
   * @param restedAt when the detector hears that the potential rests
   */
  List<Double> told(MoveSigns signs, double restedAt) {
    MoveDetector detector = new MoveDetector(signs);
    List<Double> told = new ArrayList<>();
    boolean rested = false;
    for (int i = 0; i < seconds.size(); i++) {
      Motion motion = detector.accept(Math.round(seconds.get(i) * 1e9), millivolts.get(i));
      if (motion == Motion.MOVED_BY_STEP || motion == Motion.MOVED_THROUGH_AIR) {
        told.add(seconds.get(i));
      }
      if (!rested && seconds.get(i) >= restedAt) {
        rested = true;
        detector.rested();
      }
    }
    return told;
  }
}
