package org.restpoint.stability.settle1;

import java.util.List;

/**
 * The sets of curves of a run.
 *
 * @param tuning the one that settings are chosen on
 * @param seeds the seeds of those that are reported
 * @param reports those that are reported, one at least
 */
record Sets(List<Curve> tuning, List<Long> seeds, List<List<Curve>> reports) {

  static Sets draw(long tuningSeed, List<Long> reportSeeds, int curves) {
    return new Sets(
        Settle1.curves(tuningSeed, curves),
        reportSeeds,
        reportSeeds.parallelStream().map(seed -> Settle1.curves(seed, curves)).toList());
  }
}
