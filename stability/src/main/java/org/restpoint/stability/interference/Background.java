package org.restpoint.stability.interference;

import java.util.ArrayList;
import java.util.List;

/**
 * The activity of the primary ion that all interfering ions of a sample make up.
 *
 * <p>{@code b = Σ K_j·a_j^(z_i/z_j)}, mol/L, and {@code u²(b) = Σ u²(b_j)}, the interfering ions
 * being independent of each other.
 *
 * <p>Edge results: no interfering ions make up 0 ± 0. A sum that is not a finite number is refused.
 *
 * <p>Reference: R. P. Buck, E. Lindner, Pure Appl. Chem. 66 (1994) 2527, doi
 * 10.1351/pac199466122527 (Nikolsky–Eisenman equation).
 *
 * @param molesPerLitre b, 0 or above
 * @param standardUncertainty u(b), mol/L, k = 1
 * @param parts what each interfering ion makes up, in the order they were given
 */
public record Background(double molesPerLitre, double standardUncertainty, List<Part> parts) {

  /**
   * What one interfering ion makes up.
   *
   * @param interferent the ion
   * @param molesPerLitre its part of b, 0 or above
   * @param standardUncertainty of that part, mol/L, k = 1
   */
  public record Part(Interferent interferent, double molesPerLitre, double standardUncertainty) {}

  public Background {
    parts = List.copyOf(parts);
    if (!(molesPerLitre >= 0) || Double.isInfinite(molesPerLitre)) {
      throw new IllegalArgumentException(
          "interfering ions make up 0 mol/L or above, not " + molesPerLitre);
    }
    if (!(standardUncertainty >= 0) || Double.isInfinite(standardUncertainty)) {
      throw new IllegalArgumentException(
          "an uncertainty is 0 mol/L or above, not " + standardUncertainty);
    }
  }

  /**
   * That of the interfering ions of a sample.
   *
   * @param primaryCharge charge number of the ion measured
   * @param interferents the ions, of the same sign of charge; one of the other sign is refused with
   *     an {@link IllegalArgumentException}
   */
  public static Background of(int primaryCharge, List<Interferent> interferents) {
    Charges.check("the charge of the primary ion", primaryCharge);
    double sum = 0;
    double uncertainty = 0;
    List<Part> parts = new ArrayList<>();
    for (Interferent interferent : interferents) {
      Part part =
          new Part(
              interferent,
              interferent.madeUpMolesPerLitre(primaryCharge),
              interferent.standardUncertainty(primaryCharge));
      sum += part.molesPerLitre();
      uncertainty = Math.hypot(uncertainty, part.standardUncertainty());
      parts.add(part);
    }
    return new Background(sum, uncertainty, parts);
  }

  /**
   * The lowest activity of the primary ion that can be told from none beside these ions, mol/L:
   * where the prolonged straight line crosses the level that they hold, {@code a_DL = Σ
   * K_j·a_j^(z_i/z_j)}, which is b itself.
   *
   * <p>There the potential lies 18/z_i mV off the line at 25 °C (IUPAC, Pure Appl. Chem. 48 (1976)
   * 127). The electrode's own limit without them is not in it.
   */
  public double detectionLimitMolesPerLitre() {
    return molesPerLitre;
  }
}
