package org.restpoint.config.station;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How an electrode's results are checked, role by role; what is empty is given only when somebody
 * asks for it, and is judged by the usual limits.
 *
 * @param checkStandard a known solution read as if it were a sample
 * @param blank a sample of nothing
 * @param duplicate another portion of a sample
 * @param spike a portion of a sample with a known amount added
 */
public record Checks(
    Optional<CheckStandard> checkStandard,
    Optional<Blank> blank,
    Optional<Duplicate> duplicate,
    Optional<Spike> spike) {

  /** The station file says nothing of checks. */
  public static Checks none() {
    return new Checks(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  /**
   * Recoveries that are accepted.
   *
   * @param lowPercent the lowest, 0 to below 100 %
   * @param highPercent the highest, above 100 %
   */
  public record Recovery(double lowPercent, double highPercent) {

    /** Checks that 100 % lies between them. */
    public Recovery {
      if (!(lowPercent >= 0 && lowPercent < 100 && highPercent > 100)
          || Double.isInfinite(highPercent)) {
        throw new IllegalArgumentException(
            "recoveries hold 100 % between them: " + lowPercent + ".." + highPercent);
      }
    }
  }

  /**
   * A known solution.
   *
   * @param standard its name among the standards; there where {@code every} says how often
   * @param every how often it is due
   * @param recovery the recoveries accepted; empty for the usual ones
   * @param withinPh how far a buffer may be off, in pH; empty for the usual limit
   */
  public record CheckStandard(
      Optional<String> standard,
      Calibrate.Every every,
      Optional<Recovery> recovery,
      OptionalDouble withinPh) {}

  /**
   * A sample of nothing.
   *
   * @param every how often it is due
   * @param below how much it may hold, on the electrode's own basis; empty where the lowest value
   *     that is told as a number is the limit
   */
  public record Blank(Calibrate.Every every, Optional<Quantity> below) {}

  /**
   * Another portion of a sample.
   *
   * @param every how often it is due
   * @param withinPercent how far two results may differ, % of their mean; empty for the usual limit
   * @param withinPh the same in pH
   */
  public record Duplicate(
      Calibrate.Every every, OptionalDouble withinPercent, OptionalDouble withinPh) {}

  /**
   * A portion of a sample with a known amount added.
   *
   * @param every how often it is due
   * @param addsMillilitres how much of the solution is added, above zero
   * @param of what that solution holds, on the electrode's own basis
   * @param intoMillilitres the volume of sample it is added to, above zero
   * @param relativeUncertainty standard uncertainty of the amount added, as a share of it; 0 to 1
   * @param recovery the recoveries accepted; empty for the usual ones
   */
  public record Spike(
      Calibrate.Every every,
      double addsMillilitres,
      Quantity of,
      double intoMillilitres,
      double relativeUncertainty,
      Optional<Recovery> recovery) {

    /** Checks the volumes. */
    public Spike {
      if (!(addsMillilitres > 0 && intoMillilitres > 0)) {
        throw new IllegalArgumentException("volumes of a spike are above zero");
      }
    }
  }
}
