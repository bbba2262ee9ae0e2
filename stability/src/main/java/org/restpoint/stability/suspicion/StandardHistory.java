package org.restpoint.stability.suspicion;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/**
 * How a standard read the last times that it passed.
 *
 * <p>Usual is the median; a scatter is {@code 1.4826·MAD}, MAD the median distance from the median,
 * which is the standard deviation of what is normally distributed (P. J. Rousseeuw and C. Croux, J.
 * Am. Stat. Assoc. 88 (1993) 1273). Of three readings and fewer nothing is called usual, of seven
 * and fewer no movement is.
 *
 * @param passed the readings, oldest first, {@value #MOST} at most
 */
public record StandardHistory(List<Passed> passed) {

  /** Two weeks of a standard in the morning and at noon; what is older says little of today. */
  public static final int MOST = 20;

  /** A median of fewer is one of them. */
  private static final int LEAST_FOR_USUAL = 3;

  /** A scatter of fewer is too often small by chance. */
  private static final int LEAST_FOR_SCATTER = 8;

  private static final double NORMAL = 1.4826;

  /**
   * A night, when an electrode is stored and soaked anew: offsets move more from day to day than
   * within a day (common practice).
   */
  public static final Duration NIGHT = Duration.ofHours(8);

  public StandardHistory {
    passed = List.copyOf(passed);
  }

  /**
   * A reading that passed.
   *
   * @param time when it came to rest
   * @param movedMillivolts the potential found less the one that the calibration in force expected,
   *     mV; empty where none could be expected
   * @param overNight whether no standard had been read for a night
   * @param celsius its temperature, °C
   * @param seconds how long it took to come to rest
   * @param spreadMillivolts largest minus smallest of its last readings, mV
   */
  public record Passed(
      Instant time,
      OptionalDouble movedMillivolts,
      boolean overNight,
      double celsius,
      double seconds,
      double spreadMillivolts) {}

  /**
   * What a standard usually moves by.
   *
   * @param readings how many that is known from
   * @param median the median, mV
   * @param scatter 1.4826·MAD, mV, 0 or above
   */
  public record Usual(int readings, double median, double scatter) {}

  /** A standard never read. */
  public static StandardHistory none() {
    return new StandardHistory(List.of());
  }

  /** With one more; the oldest falls out. */
  public StandardHistory with(Passed latest) {
    List<Passed> all = new ArrayList<>(passed);
    all.add(latest);
    return new StandardHistory(all.subList(Math.max(0, all.size() - MOST), all.size()));
  }

  /** How long it usually takes to come to rest, s. */
  public OptionalDouble usualSeconds() {
    return passed.size() < LEAST_FOR_USUAL
        ? OptionalDouble.empty()
        : OptionalDouble.of(median(passed.stream().mapToDouble(Passed::seconds)));
  }

  /** Its usual spread, mV. */
  public OptionalDouble usualSpreadMillivolts() {
    return passed.size() < LEAST_FOR_USUAL
        ? OptionalDouble.empty()
        : OptionalDouble.of(median(passed.stream().mapToDouble(Passed::spreadMillivolts)));
  }

  /** What it usually moves by over a night, or within a day. */
  public Optional<Usual> usualMove(boolean overNight) {
    double[] moves =
        passed.stream()
            .filter(reading -> reading.overNight() == overNight)
            .flatMapToDouble(reading -> reading.movedMillivolts().stream())
            .toArray();
    if (moves.length < LEAST_FOR_SCATTER) {
      return Optional.empty();
    }
    double median = median(DoubleStream.of(moves));
    double distance = median(DoubleStream.of(moves).map(move -> Math.abs(move - median)));
    return Optional.of(new Usual(moves.length, median, NORMAL * distance));
  }

  private static double median(DoubleStream values) {
    double[] sorted = values.sorted().toArray();
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }
}
