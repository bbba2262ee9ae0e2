package org.restpoint.config.station;

/** How a potential that was read at another temperature than the standards is corrected. */
public sealed interface Compensation {

  /** By the ideal slope at the sample's temperature alone. */
  record Ideal() implements Compensation {}

  /**
   * By a line that turns about one point: there the potential does not change with temperature.
   *
   * @param concentration the concentration of that point, above zero, on the electrode's own basis
   * @param relativeUncertainty its standard uncertainty as a share of it, 0 to 1
   */
  record Isopotential(Quantity concentration, double relativeUncertainty) implements Compensation {

    /** Checks the ranges. */
    public Isopotential {
      if (!(concentration.value() > 0)) {
        throw new IllegalArgumentException("a concentration above zero: " + concentration);
      }
      if (!(relativeUncertainty >= 0 && relativeUncertainty <= 1)) {
        throw new IllegalArgumentException("a share is 0 to 1: " + relativeUncertainty);
      }
    }
  }

  /**
   * The same for an electrode that is measured in pH.
   *
   * @param ph the pH of that point, 0 to 14
   * @param phUncertainty its standard uncertainty in pH, no less than zero
   */
  record IsopotentialPh(double ph, double phUncertainty) implements Compensation {

    /** Checks the ranges. */
    public IsopotentialPh {
      if (!(ph >= 0 && ph <= 14)) {
        throw new IllegalArgumentException("an isopotential pH is 0 to 14: " + ph);
      }
      if (!(phUncertainty >= 0) || !Double.isFinite(phUncertainty)) {
        throw new IllegalArgumentException("an uncertainty is not negative: " + phUncertainty);
      }
    }
  }

  /**
   * By what was measured with this electrode in one solution.
   *
   * @param millivoltsPerKelvin how the potential changes there, in mV/K
   * @param at what that solution holds: a concentration on the electrode's own basis, or a pH
   * @param uncertaintyMillivoltsPerKelvin its standard uncertainty in mV/K, no less than zero
   */
  record MeasuredCoefficient(
      double millivoltsPerKelvin, Quantity at, double uncertaintyMillivoltsPerKelvin)
      implements Compensation {

    /** Checks that the numbers are finite and the uncertainty is no less than zero. */
    public MeasuredCoefficient {
      if (!Double.isFinite(millivoltsPerKelvin)
          || !Double.isFinite(uncertaintyMillivoltsPerKelvin)
          || uncertaintyMillivoltsPerKelvin < 0) {
        throw new IllegalArgumentException(
            "no coefficient: "
                + millivoltsPerKelvin
                + " mV/K, uncertain by "
                + uncertaintyMillivoltsPerKelvin);
      }
    }
  }
}
