package org.restpoint.stability.chemistry;

import java.util.Optional;

/** A unit of concentration, by its UCUM code. */
public enum ConcentrationUnit {
  /** Milligrams per litre. */
  MILLIGRAMS_PER_LITRE("mg/L", 1e-3, true),
  /** Micrograms per litre. */
  MICROGRAMS_PER_LITRE("ug/L", 1e-6, true),
  /** Moles per litre. */
  MOLES_PER_LITRE("mol/L", 1, false),
  /** Millimoles per litre. */
  MILLIMOLES_PER_LITRE("mmol/L", 1e-3, false),
  /** Micromoles per litre. */
  MICROMOLES_PER_LITRE("umol/L", 1e-6, false);

  private final String code;
  private final double scale;
  private final boolean mass;

  ConcentrationUnit(String code, double scale, boolean mass) {
    this.code = code;
    this.scale = scale;
    this.mass = mass;
  }

  /** The unit's UCUM code. */
  public String code() {
    return code;
  }

  /** The unit with that UCUM code, if it is one of these. */
  public static Optional<ConcentrationUnit> ofCode(String code) {
    for (ConcentrationUnit unit : values()) {
      if (unit.code.equals(code)) {
        return Optional.of(unit);
      }
    }
    return Optional.empty();
  }

  /** How many mol/L one of this unit is; the basis matters for mass concentrations alone. */
  double molesPerLitre(Analyte analyte, Basis basis) {
    return mass ? scale / analyte.gramsPerMole(basis) : scale;
  }
}
