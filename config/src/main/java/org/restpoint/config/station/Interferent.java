package org.restpoint.config.station;

import java.util.Optional;

/**
 * Another ion that the electrode answers to as well.
 *
 * @param ion its name from the vocabulary
 * @param selectivity the selectivity coefficient for it, a plain number above zero
 * @param level how much of it there is in samples
 * @param basis {@code as-N} or {@code as-ion} of the level; empty where the ion leaves no choice,
 *     and where the level is an amount of substance and the file gives none
 */
public record Interferent(String ion, double selectivity, Level level, Optional<String> basis) {

  /** Checks the selectivity. */
  public Interferent {
    if (!(selectivity > 0) || !Double.isFinite(selectivity)) {
      throw new IllegalArgumentException("a selectivity is above zero: " + selectivity);
    }
  }

  /** How much of an interfering ion there is. */
  public sealed interface Level {

    /**
     * It is known: results are corrected for it.
     *
     * @param concentration above zero
     * @param relativeUncertainty its standard uncertainty as a share of it, 0 to 1
     */
    record Known(Quantity concentration, double relativeUncertainty) implements Level {

      /** Checks the ranges. */
      public Known {
        if (!(concentration.value() > 0)) {
          throw new IllegalArgumentException("a concentration above zero: " + concentration);
        }
        if (!(relativeUncertainty >= 0 && relativeUncertainty <= 1)) {
          throw new IllegalArgumentException("a share is 0 to 1: " + relativeUncertainty);
        }
      }
    }

    /**
     * Only a limit is known: nothing is corrected, and the bias it could cause is told.
     *
     * @param concentration above zero
     */
    record AtMost(Quantity concentration) implements Level {

      /** Checks the range. */
      public AtMost {
        if (!(concentration.value() > 0)) {
          throw new IllegalArgumentException("a limit above zero: " + concentration);
        }
      }
    }
  }
}
