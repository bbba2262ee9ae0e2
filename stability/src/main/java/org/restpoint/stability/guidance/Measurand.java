package org.restpoint.stability.guidance;

import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Basis;
import org.restpoint.stability.chemistry.Concentration;
import org.restpoint.stability.chemistry.ConcentrationUnit;

/**
 * What a number is of and how it is counted. Refuses, with an {@link IllegalArgumentException}, a
 * basis that has no meaning for the ion.
 *
 * @param analyte the ion
 * @param of of what: {@link #WATER}, {@link #DRY_SOIL} or any other words a result has for it
 * @param unit a UCUM code: one of {@link ConcentrationUnit}, {@link #MILLIGRAMS_PER_KILOGRAM} or
 *     {@code [pH]}
 * @param basis what a mass is the mass of
 */
public record Measurand(Analyte analyte, String of, String unit, Basis basis) {

  /** Of water as it was taken. */
  public static final String WATER = "water";

  /** Of oven-dry soil. */
  public static final String DRY_SOIL = "dry soil";

  /** Milligrams of the analyte in a kilogram of soil. */
  public static final String MILLIGRAMS_PER_KILOGRAM = "mg/kg";

  public Measurand {
    if (!analyte.bases().contains(basis)) {
      throw new IllegalArgumentException(analyte.name() + " cannot be given " + basis.code());
    }
  }

  /**
   * By what a number of this has to be multiplied to be one of the other: empty where they are of
   * different things, or in units that no molar mass joins.
   */
  OptionalDouble factorTo(Measurand other) {
    if (!analyte.equals(other.analyte) || !of.equals(other.of)) {
      return OptionalDouble.empty();
    }
    Optional<ConcentrationUnit> from = ConcentrationUnit.ofCode(unit);
    Optional<ConcentrationUnit> to = ConcentrationUnit.ofCode(other.unit);
    if (from.isPresent() && to.isPresent()) {
      double molesPerLitre = new Concentration(1, from.get(), basis).molesPerLitre(analyte);
      return OptionalDouble.of(
          Concentration.ofMolesPerLitre(molesPerLitre, analyte, to.get(), other.basis).value());
    }
    if (!unit.equals(other.unit)) {
      return OptionalDouble.empty();
    }
    return unit.equals(MILLIGRAMS_PER_KILOGRAM)
        ? OptionalDouble.of(analyte.gramsPerMole(other.basis) / analyte.gramsPerMole(basis))
        : OptionalDouble.of(1);
  }

  /** The unit with its basis where that is a choice: {@code mg/L as N}, {@code mg/L as nitrate}. */
  String units() {
    boolean counted = unit.startsWith("mg/") || unit.startsWith("ug/");
    if (!counted || analyte.bases().size() < 2) {
      return unit.equals("[pH]") ? "pH" : unit;
    }
    return unit + (basis == Basis.AS_N ? " as N" : " as " + analyte.name());
  }
}
