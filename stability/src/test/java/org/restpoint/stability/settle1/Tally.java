package org.restpoint.stability.settle1;

/** Counts what one setting makes of the curves of a sweep. */
final class Tally {

  private int settled;
  private int never;
  private int overOne;
  private int overHalf;
  private double seconds;
  private double errors;
  private double squares;

  /** Settled at a second with a potential, in mV. */
  void settled(Curve curve, int second, double millivolts) {
    double error = millivolts - curve.truthAt(second);
    settled++;
    seconds += second;
    errors += error;
    squares += error * error;
    if (Math.abs(error) > Scores.FALSE_MILLIVOLTS) {
      overOne++;
    }
    if (Math.abs(error) > Scores.STRICTLY_FALSE_MILLIVOLTS) {
      overHalf++;
    }
  }

  /** Never settled. */
  void never() {
    never++;
    seconds += Settle1.SECONDS;
  }

  Swept swept(Candidate candidate) {
    double n = settled + never;
    double decided = Math.max(1, settled);
    return new Swept(
        candidate,
        never / n,
        overOne / n,
        overHalf / n,
        errors / decided,
        Math.sqrt(squares / decided),
        seconds / n);
  }
}
