package org.restpoint.stability.fit;

/** The x that a reading does not contradict at a level. */
public sealed interface FiellerInterval {

  /**
   * All x from {@code lower} to {@code upper}, which need not lie alike about x0.
   *
   * @param lower the smallest
   * @param upper the largest
   */
  record Bounded(double lower, double upper) implements FiellerInterval {}

  /**
   * No finite interval: the slope does not differ from 0 at this level, so the reading tells
   * nothing of x.
   *
   * @param slopeOverUncertainty |b|/u(b), at most k
   * @param coverageFactor k
   */
  record Unbounded(double slopeOverUncertainty, double coverageFactor) implements FiellerInterval {}
}
