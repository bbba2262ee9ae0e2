package org.restpoint.stability.health;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * What was seen of one quantity, in one standard where the quantity depends on it; in order of
 * time. A value: {@code series = series.accept(observation)}; the components are all there is to
 * write out and take up again.
 *
 * <p>Bounded: at most {@link #LARGEST}. Beyond that, the oldest after the first {@link #BASE} is
 * dropped and counted, so that the electrode's beginnings stay and accepted = held + dropped. One
 * that came late is put where it belongs; one that is there already changes nothing.
 *
 * @param observations oldest first
 * @param dropped how many were dropped, 0 or above
 */
public record Series(List<Observation> observations, long dropped) {

  /** How many are held. 200 are more than half a year of one a day. Our choice. */
  public static final int LARGEST = 200;

  /** How many of the first ones make the base that is kept for good. Our choice. */
  public static final int BASE = 20;

  private static final double MILLISECONDS_PER_DAY = 86_400_000;

  public Series {
    observations = List.copyOf(observations);
    if (observations.isEmpty() || observations.size() > LARGEST || dropped < 0) {
      throw new IllegalArgumentException("a series holds 1 to " + LARGEST + " observations");
    }
    for (int i = 1; i < observations.size(); i++) {
      if (observations.get(i).time().isBefore(observations.get(i - 1).time())) {
        throw new IllegalArgumentException("a series is in order of time");
      }
      if (!comparable(observations.get(0), observations.get(i))) {
        throw new IllegalArgumentException("a series is of one quantity in one standard");
      }
    }
  }

  /** A series of one. */
  public static Series of(Observation first) {
    return new Series(List.of(first), 0);
  }

  static boolean comparable(Observation one, Observation other) {
    return one.quantity() == other.quantity()
        && (!one.quantity().perStandard() || one.standard().equals(other.standard()));
  }

  /** The series with one more, which has to be {@link #takes comparable}. */
  public Series accept(Observation observation) {
    if (observations.contains(observation)) {
      return this;
    }
    List<Observation> next = new ArrayList<>(observations);
    int place = next.size();
    while (place > 0 && next.get(place - 1).time().isAfter(observation.time())) {
      place--;
    }
    next.add(place, observation);
    if (next.size() <= LARGEST) {
      return new Series(next, dropped);
    }
    next.remove(BASE);
    return new Series(next, dropped + 1);
  }

  /** Whether an observation belongs to this series. */
  public boolean takes(Observation observation) {
    return comparable(observations.get(0), observation);
  }

  /** What is watched. */
  public Quantity quantity() {
    return observations.get(0).quantity();
  }

  /** The newest one. */
  public Observation latest() {
    return observations.get(observations.size() - 1);
  }

  /** The first ones, fewer than {@link #BASE} in a young series. */
  public List<Observation> base() {
    return observations.subList(0, Math.min(BASE, observations.size()));
  }

  /** Those that no dropped one lies between: all, or all after the base. */
  public List<Observation> unbroken() {
    return dropped == 0 ? observations : observations.subList(BASE, observations.size());
  }

  static double[] values(List<Observation> observations) {
    return observations.stream().mapToDouble(Observation::value).toArray();
  }

  static double days(Instant from, Instant to) {
    return Duration.between(from, to).toMillis() / MILLISECONDS_PER_DAY;
  }

  /** Times in days since the first of them. */
  static double[] days(List<Observation> observations) {
    Instant first = observations.get(0).time();
    return observations.stream().mapToDouble(o -> days(first, o.time())).toArray();
  }
}
