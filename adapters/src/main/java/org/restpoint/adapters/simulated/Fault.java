package org.restpoint.adapters.simulated;

/**
 * What can go wrong between a simulated solution and the service. Each refuses, with an {@link
 * IllegalArgumentException}, numbers outside its ranges.
 */
public sealed interface Fault {

  /** A fault of the line: readings do not come, or too many. */
  sealed interface OfLine extends Fault {}

  /** Open, but nothing is sent. */
  record Silent() implements OfLine {}

  /** Pulled out: the link is lost until it is over. */
  record Unplugged() implements OfLine {}

  /**
   * Readings come too often.
   *
   * @param times how many in an interval, 2 to 1000
   */
  record Flood(int times) implements OfLine {

    private static final int MOST_TIMES = 1000;

    public Flood {
      if (times < 2 || times > MOST_TIMES) {
        throw new IllegalArgumentException("a flood is of 2 to 1000 readings: " + times);
      }
    }
  }

  /** A fault at the electrode: readings come and are wrong. */
  sealed interface OfElectrode extends Fault {

    /**
     * The potential that is measured while the fault lasts.
     *
     * @param millivolts the potential without it, in mV
     * @param chance what of it is left to chance
     */
    double disturbed(double millivolts, FaultChance chance);

    /** How many times slower the electrode responds while it lasts. */
    default double slowness() {
      return 1;
    }
  }

  /**
   * The electrode is not connected: a potential far off that wanders and is noisy.
   *
   * @param farMillivolts about which it wanders, in mV
   * @param wanderMillivolts standard deviation of its wandering, in mV; a tenth of it is noise
   */
  record OpenCircuit(double farMillivolts, double wanderMillivolts) implements OfElectrode {

    private static final double NOISE_SHARE = 0.1;

    public OpenCircuit {
      finite(farMillivolts);
      notBelowZero(wanderMillivolts);
    }

    @Override
    public double disturbed(double millivolts, FaultChance chance) {
      return farMillivolts
          + wanderMillivolts * (chance.wandering() + NOISE_SHARE * chance.gaussian());
    }
  }

  /**
   * Single readings far off, either way.
   *
   * @param millivolts how far, in mV
   * @param share of the readings that are, 0 to 1
   */
  record Spikes(double millivolts, double share) implements OfElectrode {

    public Spikes {
      finite(millivolts);
      if (!(share >= 0 && share <= 1)) {
        throw new IllegalArgumentException("a share of spikes is from 0 to 1: " + share);
      }
    }

    @Override
    public double disturbed(double measured, FaultChance chance) {
      double drawn = chance.uniform();
      if (drawn >= share) {
        return measured;
      }
      return drawn < share / 2 ? measured - millivolts : measured + millivolts;
    }
  }

  /**
   * More white noise, such as from a motor that starts beside the cable.
   *
   * @param millivolts its standard deviation, in mV, 0 or above
   */
  record NoiseBurst(double millivolts) implements OfElectrode {

    public NoiseBurst {
      notBelowZero(millivolts);
    }

    @Override
    public double disturbed(double measured, FaultChance chance) {
      return measured + millivolts * chance.gaussian();
    }
  }

  /**
   * An air bubble before the membrane: the potential jumps, and little of the solution gets to it.
   *
   * @param jumpMillivolts by how much it jumps, in mV
   * @param slowness how many times slower it responds, 1 or above
   */
  record AirBubble(double jumpMillivolts, double slowness) implements OfElectrode {

    public AirBubble {
      finite(jumpMillivolts);
      slower(slowness);
    }

    @Override
    public double disturbed(double measured, FaultChance chance) {
      return measured + jumpMillivolts;
    }
  }

  /**
   * A coat on the membrane: it responds more slowly.
   *
   * @param slowness how many times, 1 or above
   */
  record CoatedMembrane(double slowness) implements OfElectrode {

    public CoatedMembrane {
      slower(slowness);
    }

    @Override
    public double disturbed(double measured, FaultChance chance) {
      return measured;
    }
  }

  /**
   * The offset jumps, and back when it is over.
   *
   * @param millivolts by how much, in mV
   */
  record OffsetJump(double millivolts) implements OfElectrode {

    public OffsetJump {
      finite(millivolts);
    }

    @Override
    public double disturbed(double measured, FaultChance chance) {
      return measured + millivolts;
    }
  }

  private static void finite(double millivolts) {
    if (!Double.isFinite(millivolts)) {
      throw new IllegalArgumentException("the potential of a fault is a finite number");
    }
  }

  private static void notBelowZero(double millivolts) {
    if (!(millivolts >= 0) || millivolts == Double.POSITIVE_INFINITY) {
      throw new IllegalArgumentException("the noise of a fault is 0 or above and finite");
    }
  }

  private static void slower(double slowness) {
    if (!(slowness >= 1) || slowness == Double.POSITIVE_INFINITY) {
      throw new IllegalArgumentException("a slow electrode is 1 or more times slower: " + slowness);
    }
  }
}
