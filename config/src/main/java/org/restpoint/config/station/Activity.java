package org.restpoint.config.station;

/**
 * The salt in samples and standards where nothing is added that makes it the same in both, so that
 * activity and concentration are told apart.
 *
 * @param model the formula for activity coefficients
 * @param sample ionic strength of the samples, mol/L or mmol/L, no less than zero
 * @param relativeUncertainty its standard uncertainty as a share of it, 0 to 1
 * @param standards ionic strength of the standards
 */
public record Activity(
    Model model, Quantity sample, double relativeUncertainty, OfStandards standards) {

  /** Checks the ranges. */
  public Activity {
    if (!(sample.value() >= 0)) {
      throw new IllegalArgumentException("an ionic strength is not negative: " + sample);
    }
    if (!(relativeUncertainty >= 0 && relativeUncertainty <= 1)) {
      throw new IllegalArgumentException("a share is 0 to 1: " + relativeUncertainty);
    }
  }

  /** A formula for activity coefficients. */
  public enum Model {
    /** Davies. */
    DAVIES,
    /** Extended Debye-Hückel. */
    DEBYE_HUECKEL
  }

  /** Ionic strength of the standards. */
  public sealed interface OfStandards {

    /** That of each standard's own salt and nothing else. */
    record Own() implements OfStandards {}

    /**
     * The same in all standards.
     *
     * @param ionicStrength mol/L or mmol/L, no less than zero
     */
    record Given(Quantity ionicStrength) implements OfStandards {

      /** Checks the range. */
      public Given {
        if (!(ionicStrength.value() >= 0)) {
          throw new IllegalArgumentException("an ionic strength is not negative: " + ionicStrength);
        }
      }
    }
  }
}
