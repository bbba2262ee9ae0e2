package org.restpoint.stability.settle1;

/** What a rule makes of a curve. */
public sealed interface Decision {

  /** When it came, in s after the step; {@value Settle1#SECONDS} when it never did. */
  double seconds();

  /**
   * At rest.
   *
   * @param seconds when, in s after the step
   * @param errorMillivolts the published potential less the truth at that time
   * @param standardUncertaintyMillivolts what the rule says of it
   */
  record Settled(double seconds, double errorMillivolts, double standardUncertaintyMillivolts)
      implements Decision {}

  /** Never at rest. */
  record Never() implements Decision {

    @Override
    public double seconds() {
      return Settle1.SECONDS;
    }
  }
}
