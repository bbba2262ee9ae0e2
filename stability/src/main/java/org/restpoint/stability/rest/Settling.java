package org.restpoint.stability.rest;

/**
 * One reading of a potential, from the instruction to the decision: a rule between two limits of
 * time. Allocates nothing while it takes readings. Not safe for several threads.
 */
public final class Settling {

  /** How far it has come. */
  public enum Stage {
    /** No decision yet. */
    WAITING,
    /** At rest. */
    AT_REST,
    /** The limit passed without rest. */
    GIVEN_UP
  }

  private final RestDetector detector;
  private final long startNanos;
  private final long earliestNanos;
  private final long deadlineNanos;
  private Stage stage = Stage.WAITING;
  private long taken;
  private long decidedNanos;

  /**
   * Begins at an instant.
   *
   * @param detector the rule at work, at its beginning
   * @param limits when a decision may come
   * @param startNanos the beginning, in ns from any fixed origin; {@link #accept} uses the same
   */
  public Settling(RestDetector detector, SettleLimits limits, long startNanos) {
    this.detector = detector;
    this.startNanos = startNanos;
    this.earliestNanos = Math.addExact(startNanos, limits.notBefore().toNanos());
    this.deadlineNanos = Math.addExact(startNanos, limits.giveUpAfter().toNanos());
  }

  /**
   * Takes a reading. One after the deadline is not taken: the wait is given up at the deadline.
   * After a decision nothing changes any more.
   */
  public Stage accept(long nanos, double millivolts) {
    if (elapse(nanos) != Stage.WAITING) {
      return stage;
    }
    taken++;
    if (detector.accept(nanos, millivolts) && nanos >= earliestNanos) {
      stage = Stage.AT_REST;
      decidedNanos = nanos;
    }
    return stage;
  }

  /** Lets time pass without a reading: past the deadline the wait is given up. */
  public Stage elapse(long nanos) {
    if (stage == Stage.WAITING && nanos > deadlineNanos) {
      stage = Stage.GIVEN_UP;
      decidedNanos = deadlineNanos;
    }
    return stage;
  }

  /** How far it has come. */
  public Stage stage() {
    return stage;
  }

  /** When the wait is given up, in ns. */
  public long deadlineNanos() {
    return deadlineNanos;
  }

  /** Readings taken since the beginning. */
  public long taken() {
    return taken;
  }

  /** From the beginning to the decision, in s; only after a decision. */
  public double elapsedSeconds() {
    if (stage == Stage.WAITING) {
      throw new IllegalStateException("no decision yet");
    }
    return (decidedNanos - startNanos) / 1e9;
  }

  /** What the rule sees; needs one reading at least. */
  public RestProgress progress() {
    return detector.progress();
  }

  /** The resting potential; only at {@link Stage#AT_REST}. */
  public RestingPotential potential() {
    if (stage != Stage.AT_REST) {
      throw new IllegalStateException("not at rest");
    }
    return detector.potential();
  }
}
