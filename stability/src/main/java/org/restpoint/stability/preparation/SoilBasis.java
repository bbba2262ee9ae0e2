package org.restpoint.stability.preparation;

/** What a mass of soil is the mass of. */
public enum SoilBasis {
  /** As it came from the field, with the water it had. */
  AS_RECEIVED("as-received"),
  /** Dried in air, with the water that air leaves in it. */
  AIR_DRY("air-dry"),
  /** Dried in an oven at 105 °C to constant mass. */
  OVEN_DRY("oven-dry");

  private final String code;

  SoilBasis(String code) {
    this.code = code;
  }

  /** How the basis is written in messages. */
  public String code() {
    return code;
  }
}
