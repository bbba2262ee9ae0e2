package org.restpoint.stability.suspicion;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is known of an electrode's day when it comes into a standard; each may not be known.
 *
 * @param soaked whether it was soaked before
 * @param rinsedSince whether it was rinsed since the solution before
 * @param previousMolesPerLitre what the solution before held, mol/L of the ion, 0 or above
 */
public record Circumstances(
    Optional<Boolean> soaked, Optional<Boolean> rinsedSince, OptionalDouble previousMolesPerLitre) {

  public Circumstances {
    if (!(previousMolesPerLitre.orElse(0) >= 0)
        || Double.isInfinite(previousMolesPerLitre.orElse(0))) {
      throw new IllegalArgumentException("a concentration is 0 mol/L or above");
    }
  }

  /** Nothing is known. */
  public static Circumstances unknown() {
    return new Circumstances(Optional.empty(), Optional.empty(), OptionalDouble.empty());
  }

  /** It was soaked. */
  public Circumstances afterSoak() {
    return new Circumstances(Optional.of(true), Optional.of(true), OptionalDouble.empty());
  }

  /** It was rinsed. */
  public Circumstances afterRinse() {
    return new Circumstances(soaked, Optional.of(true), previousMolesPerLitre);
  }

  /**
   * It is about to be read, and somebody tells of all that is done with it.
   *
   * @param wasSoaked whether it was soaked
   * @param nothingToRinse whether it was rinsed, or there was nothing to rinse off
   */
  public Circumstances before(boolean wasSoaked, boolean nothingToRinse) {
    return new Circumstances(
        Optional.of(wasSoaked),
        nothingToRinse ? rinsedSince : Optional.of(false),
        previousMolesPerLitre);
  }

  /**
   * It stood in a solution of so much, where that is known; nobody has said yet that it is rinsed.
   */
  public Circumstances afterSolution(OptionalDouble molesPerLitre) {
    return new Circumstances(soaked, Optional.empty(), molesPerLitre);
  }
}
