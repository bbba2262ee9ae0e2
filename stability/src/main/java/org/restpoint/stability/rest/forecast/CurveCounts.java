package org.restpoint.stability.rest.forecast;

import java.util.ArrayList;
import java.util.List;

/**
 * How often each response curve was seen in one direction at one level: part of a {@link
 * ResponseHistory}.
 *
 * <p>Counts are kept to 0.0001, so that what has become negligible is 0 and takes no room where it
 * is written down.
 *
 * @param band the level: resting potentials from 60·band mV to below 60·(band + 1) mV, −100 to 100
 * @param rising whether the potential rose to its rest
 * @param counts one a curve, 0 or above, in the order of a {@link ResponsePrior}
 */
public record CurveCounts(int band, boolean rising, List<Double> counts) {

  private static final double BAND_MILLIVOLTS = 60;
  private static final int FURTHEST_BAND = 100;
  private static final double PER_COUNT = 1e4;

  /** Where it belongs. */
  record Place(int band, boolean rising) {}

  public CurveCounts {
    counts = List.copyOf(counts);
    if (Math.abs(band) > FURTHEST_BAND) {
      throw new IllegalArgumentException("a band is -100 to 100, not " + band);
    }
    if (counts.size() != Candidates.COUNT) {
      throw new IllegalArgumentException(
          "counts are of " + Candidates.COUNT + " response curves, not " + counts.size());
    }
    for (double count : counts) {
      if (!(count >= 0) || Double.isInfinite(count)) {
        throw new IllegalArgumentException("a count is 0 or above, not " + count);
      }
    }
  }

  /** Of one reading. */
  static CurveCounts of(int band, boolean rising, List<Double> weights) {
    return new CurveCounts(band, rising, weights.stream().map(CurveCounts::rounded).toList());
  }

  /** The band of a resting potential; the outermost for all beyond. */
  static int band(double millivolts) {
    double band = Math.floor(millivolts / BAND_MILLIVOLTS);
    return (int) Math.max(-FURTHEST_BAND, Math.min(FURTHEST_BAND, band));
  }

  /** Half-way between the middles of two bands, in mV. */
  static double middleMillivolts(int band, int next) {
    return BAND_MILLIVOLTS * (band + next + 1) / 2;
  }

  private static double rounded(double count) {
    return Math.rint(count * PER_COUNT) / PER_COUNT;
  }

  Place place() {
    return new Place(band, rising);
  }

  double total() {
    return counts.stream().mapToDouble(it -> it).sum();
  }

  /** With a share of each count left. */
  CurveCounts aged(double share) {
    return new CurveCounts(
        band, rising, counts.stream().map(count -> rounded(share * count)).toList());
  }

  /** With those of another of the same place. */
  CurveCounts with(CurveCounts other) {
    List<Double> sums = new ArrayList<>(counts.size());
    for (int i = 0; i < counts.size(); i++) {
      sums.add(rounded(counts.get(i) + other.counts.get(i)));
    }
    return new CurveCounts(band, rising, sums);
  }

  /** Adds a share of each count. */
  void addTo(double[] sums, double share) {
    for (int i = 0; i < sums.length; i++) {
      sums[i] += share * counts.get(i);
    }
  }
}
