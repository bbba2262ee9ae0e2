package org.restpoint.stability.rest;

/**
 * A rule at work on one potential. Keeps bounded state and allocates nothing while it takes
 * readings; the same readings give the same answers to the last bit. Not safe for several threads.
 */
public interface RestDetector {

  /**
   * Takes a reading.
   *
   * @param nanos when, in ns from any fixed origin, not before the reading given last
   * @param millivolts the potential, finite
   * @return whether the potential is at rest with this reading
   */
  boolean accept(long nanos, double millivolts);

  /** What the rule sees now. Needs one reading at least. */
  RestProgress progress();

  /** The resting potential. Only after {@link #accept} has said that it is at rest. */
  RestingPotential potential();
}
