package org.restpoint.stability.health;

/** What is watched of an electrode. */
public enum Quantity {
  /** Slope in percent of the ideal one. Drawn through several standards, so it belongs to none. */
  SLOPE_PERCENT("slope", "%", 0.1, false),
  /** Potential in a standard, or E0, in mV. */
  OFFSET_MILLIVOLTS("offset", "mV", 0.1, true),
  /** Time to rest in s. It depends on the standard, and on the one before it. */
  RESPONSE_SECONDS("response time", "s", 1, true),
  /** Standard deviation of the readings at rest in mV. */
  NOISE_MILLIVOLTS("noise", "mV", 0.01, true);

  private final String words;
  private final String unit;
  private final double resolution;
  private final boolean perStandard;

  Quantity(String words, String unit, double resolution, boolean perStandard) {
    this.words = words;
    this.unit = unit;
    this.resolution = resolution;
    this.perStandard = perStandard;
  }

  /** Its name, for a person. */
  public String words() {
    return words;
  }

  /** Its unit. */
  public String unit() {
    return unit;
  }

  /**
   * The least difference that is one (our choice: what is commonly shown). A history of values that
   * are all alike would otherwise make a last digit a jump.
   */
  public double resolution() {
    return resolution;
  }

  /** Whether only values seen in the same standard are compared. */
  public boolean perStandard() {
    return perStandard;
  }
}
