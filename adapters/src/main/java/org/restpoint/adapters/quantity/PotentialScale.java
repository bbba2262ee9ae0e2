package org.restpoint.adapters.quantity;

/**
 * How a device's number becomes a potential in mV: {@code E = number · millivoltsPerUnit + offset}.
 *
 * <p>Refuses, with an {@link IllegalArgumentException}, a factor that is zero or not finite and an
 * offset that is not finite.
 *
 * @param name what the number is called where a probe is wired: the group of a line pattern, the
 *     key of a pointer, a register or a column
 * @param millivoltsPerUnit mV a unit of the number; below zero turns the sign round
 * @param offsetMillivolts the potential at number 0, in mV
 */
public record PotentialScale(String name, double millivoltsPerUnit, double offsetMillivolts) {

  /** A number in mV. */
  public static final PotentialScale MILLIVOLTS = new PotentialScale("millivolts", 1, 0);

  /** A number in V. */
  public static final PotentialScale VOLTS = new PotentialScale("volts", 1000, 0);

  /** A number in µV. */
  public static final PotentialScale MICROVOLTS = new PotentialScale("microvolts", 1e-3, 0);

  public PotentialScale {
    if (millivoltsPerUnit == 0 || !Double.isFinite(millivoltsPerUnit)) {
      throw new IllegalArgumentException(
          "the factor from a number to mV is finite and not zero, not " + millivoltsPerUnit);
    }
    if (!Double.isFinite(offsetMillivolts)) {
      throw new IllegalArgumentException("the offset is finite, not " + offsetMillivolts);
    }
  }

  /**
   * The raw counts of a converter.
   *
   * @param millivoltsPerCount mV a count, not zero
   * @param offsetMillivolts the potential at count 0, in mV
   */
  public static PotentialScale counts(double millivoltsPerCount, double offsetMillivolts) {
    return new PotentialScale("counts", millivoltsPerCount, offsetMillivolts);
  }

  /** The potential in mV, whether it can be believed or not. */
  public double millivolts(double number) {
    return number * millivoltsPerUnit + offsetMillivolts;
  }
}
