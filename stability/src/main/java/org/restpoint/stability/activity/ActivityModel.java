package org.restpoint.stability.activity;

/**
 * How the activity coefficient of a single ion follows from the ionic strength.
 *
 * <p>Uncertainty, relative and k = 1, with r the relative uncertainty of I:
 *
 * <pre>
 * u²(γ)/γ² = (0.05·ln γ)² + (0.35·I)² + (r·∂ln γ/∂ln I)²
 * </pre>
 *
 * <p>The first two say how far the model may be trusted and are our choice, since the γ of a single
 * ion cannot be measured. 0.05: by so much of ln γ the usual conventions for single ions differ at
 * 0.01 mol/L (0.3 to 0.6 % of γ). 0.35 per mol/L: by so much the measured mean coefficients of nine
 * chlorides and nitrates differ from Davies' equation (root mean square 3.3 % at 0.1 mol/kg, 7 % at
 * 0.2, 14 % at 0.4; G. W. C. Kaye, T. H. Laby, Tables of Physical and Chemical Constants, section
 * 3.9.6). Past the model's limit, or outside 0 to 60 °C, they are together no less than 10 %, our
 * choice as well.
 *
 * <p>Edge results:
 *
 * <ul>
 *   <li>I = 0: γ = 1, uncertainty 0
 *   <li>past the model's limit, or outside 0 to 60 °C: an answer, marked {@link
 *       ActivityCoefficient#beyondValidity}
 *   <li>I below 0 or above 50 mol/L, a temperature outside −10 to 100 °C, r below 0: {@link
 *       IllegalArgumentException}
 * </ul>
 */
public sealed interface ActivityModel permits ExtendedDebyeHueckel, Davies {

  /** Uncertainty of ln γ for each unit of it. */
  double SHARE_OF_LOGARITHM = 0.05;

  /** Uncertainty of ln γ for each mol/L of ionic strength. */
  double PER_MOLE_PER_LITRE = 0.35;

  /** The least uncertainty of ln γ outside what the model was made for. */
  double LEAST_BEYOND_VALIDITY = 0.1;

  /** The highest ionic strength it was made for, itself included, mol/L. */
  double validToMolesPerLitre();

  /**
   * ln γ.
   *
   * @param ion the ion
   * @param ionicStrength I, mol/L, 0 or above
   * @param constants those of water at its temperature
   */
  double naturalLogarithm(Ion ion, double ionicStrength, DebyeHueckelConstants constants);

  /** ∂ln γ/∂ln I: by what ln γ rises for each 100 % that I does. Of the same arguments. */
  double sensitivity(Ion ion, double ionicStrength, DebyeHueckelConstants constants);

  /** γ at an ionic strength I, mol/L, that is known exactly, and at a temperature. */
  default ActivityCoefficient coefficient(Ion ion, double ionicStrength, double celsius) {
    return coefficient(ion, ionicStrength, 0, celsius);
  }

  /**
   * γ at an ionic strength that is not known exactly.
   *
   * @param ion the ion
   * @param ionicStrength I, 0 to 50 mol/L
   * @param relativeUncertaintyOfIonicStrength u(I)/I, k = 1, 0 or above
   * @param celsius temperature, −10 to 100 °C
   */
  default ActivityCoefficient coefficient(
      Ion ion, double ionicStrength, double relativeUncertaintyOfIonicStrength, double celsius) {
    double strength = new IonicStrength(ionicStrength).molesPerLitre();
    if (!(relativeUncertaintyOfIonicStrength >= 0)
        || Double.isInfinite(relativeUncertaintyOfIonicStrength)) {
      throw new IllegalArgumentException(
          "the relative uncertainty of an ionic strength is 0 or above, not "
              + relativeUncertaintyOfIonicStrength);
    }
    DebyeHueckelConstants constants = DebyeHueckelConstants.at(celsius);
    double logarithm = naturalLogarithm(ion, strength, constants);
    boolean beyond = strength > validToMolesPerLitre() || constants.beyondTable();
    double ofModel = Math.hypot(SHARE_OF_LOGARITHM * logarithm, PER_MOLE_PER_LITRE * strength);
    double ofStrength = relativeUncertaintyOfIonicStrength * sensitivity(ion, strength, constants);
    return new ActivityCoefficient(
        Math.exp(logarithm),
        Math.hypot(beyond ? Math.max(ofModel, LEAST_BEYOND_VALIDITY) : ofModel, ofStrength),
        beyond);
  }
}
