package org.restpoint.stability.suspicion;

/**
 * What may be wrong where a standard reads off, in the order of how often it is where nothing else
 * speaks. The weights before any evidence are our choice: a beaker goes wrong more often than an
 * electrode, and an electrode's treatment more often than its membrane (common practice).
 */
public enum Suspect {
  /** Something stronger got into it, or water left it. */
  STANDARD_CONTAMINATED("standard-contaminated", 6),
  /** Water or something weaker got into it. */
  STANDARD_DILUTED("standard-diluted", 6),
  /** The membrane has not taken up what it needs. */
  ELECTRODE_NOT_SOAKED("electrode-not-soaked", 4),
  /** Air sits at the membrane or at the reference's junction. */
  AIR_BUBBLE("air-bubble", 3),
  /** The solution before was carried into it. */
  RINSE_MISSED("rinse-missed", 3),
  /** The membrane wears out. */
  MEMBRANE_AGEING("membrane-ageing", 2),
  /** The standard has another temperature than it is taken for, or than the calibration's. */
  TEMPERATURE("temperature", 2),
  /** Its date is near or past. */
  STANDARD_EXPIRED("standard-expired", 1);

  private final String code;
  private final double weight;

  Suspect(String code, double weight) {
    this.code = code;
    this.weight = weight;
  }

  /** The code of its cause. */
  public String code() {
    return code;
  }

  /** How much it is believed before any evidence, beside the others. */
  double weight() {
    return weight;
  }
}
