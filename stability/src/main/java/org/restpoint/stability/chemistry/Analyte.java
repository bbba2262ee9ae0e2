package org.restpoint.stability.chemistry;

import java.util.List;
import java.util.Optional;

/**
 * An ion that an electrode responds to.
 *
 * <p>Molar masses are sums of the abridged standard atomic weights of IUPAC (Prohaska et al., Pure
 * Appl. Chem. 94 (2022) 573, doi 10.1515/pac-2019-0603): H 1.008, Li 6.94, C 12.011, N 14.007, O
 * 15.999, F 18.998, Na 22.990, Mg 24.305, S 32.06, Cl 35.45, K 39.098, Ca 40.078, Br 79.904, I
 * 126.90 g/mol.
 *
 * @param name what station files call it
 * @param formula its chemical formula
 * @param charge its charge number z, ±1 or ±2
 * @param gramsPerMole molar mass of the ion, above zero
 * @param nitrogenAtoms nitrogen atoms in it; 0 where {@link Basis#AS_N} has no meaning
 */
public record Analyte(
    String name, String formula, int charge, double gramsPerMole, int nitrogenAtoms) {

  private static final double H = 1.008;
  private static final double N = 14.007;
  private static final double O = 15.999;

  private static final List<Analyte> KNOWN =
      List.of(
          new Analyte("nitrate", "NO3-", -1, N + 3 * O, 1),
          new Analyte("nitrite", "NO2-", -1, N + 2 * O, 1),
          new Analyte("ammonium", "NH4+", 1, N + 4 * H, 1),
          new Analyte("potassium", "K+", 1, 39.098, 0),
          new Analyte("sodium", "Na+", 1, 22.990, 0),
          new Analyte("calcium", "Ca2+", 2, 40.078, 0),
          new Analyte("chloride", "Cl-", -1, 35.45, 0),
          new Analyte("bromide", "Br-", -1, 79.904, 0),
          new Analyte("iodide", "I-", -1, 126.90, 0),
          new Analyte("fluoride", "F-", -1, 18.998, 0),
          new Analyte("perchlorate", "ClO4-", -1, 35.45 + 4 * O, 0),
          new Analyte("hydroxide", "OH-", -1, O + H, 0),
          new Analyte("hydrogen carbonate", "HCO3-", -1, H + 12.011 + 3 * O, 0),
          new Analyte("sulfate", "SO42-", -2, 32.06 + 4 * O, 0),
          new Analyte("lithium", "Li+", 1, 6.94, 0),
          new Analyte("magnesium", "Mg2+", 2, 24.305, 0),
          new Analyte("hydrogen", "H+", 1, H, 0));

  public Analyte {
    if (charge == 0 || Math.abs(charge) > 2) {
      throw new IllegalArgumentException("an ion's charge is -2, -1, 1 or 2, not " + charge);
    }
    if (!(gramsPerMole > 0) || Double.isInfinite(gramsPerMole)) {
      throw new IllegalArgumentException("a molar mass is above zero, not " + gramsPerMole);
    }
    if (nitrogenAtoms < 0) {
      throw new IllegalArgumentException("an ion has no fewer than 0 nitrogen atoms");
    }
  }

  /** The ions known by name. */
  public static List<Analyte> known() {
    return KNOWN;
  }

  /** The ion of that name, if it is known. */
  public static Optional<Analyte> named(String name) {
    return KNOWN.stream().filter(analyte -> analyte.name.equals(name)).findFirst();
  }

  /** The bases its concentration can be given on. */
  public List<Basis> bases() {
    return nitrogenAtoms > 0 ? List.of(Basis.AS_N, Basis.AS_ION) : List.of(Basis.AS_ION);
  }

  /**
   * Grams that one mole of the ion counts for on a basis, g/mol.
   *
   * @throws IllegalArgumentException when the basis has no meaning for this ion
   */
  public double gramsPerMole(Basis basis) {
    if (!bases().contains(basis)) {
      throw new IllegalArgumentException(name + " cannot be given " + basis.code());
    }
    return basis == Basis.AS_N ? nitrogenAtoms * N : gramsPerMole;
  }
}
