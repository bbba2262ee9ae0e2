package org.restpoint.stability.activity;

/**
 * How the activity coefficient of a single ion follows from the ionic strength.
 *
 * <p>Uncertainty, relative and k = 1, with r the relative uncertainty of I:
 *
 * <pre>
 * u²(γ)/γ² = (0.08·ln γ)² + (0.15·I)² + (r·∂ln γ/∂ln I)²
 * </pre>
 *
 * <p>The first two say how far the model may be trusted and are our choice: no single ion's γ can
 * be measured, measured means of salts differ from the models about in proportion to ln γ where
 * solutions are thin, and with I where they are strong. They make 2.7 % at 0.1 mol/L and 8 % at 0.5
 * mol/L of an ion of charge ±1, which is what C. W. Davies (Ion Association, Butterworths 1962)
 * gives as mean deviation. Past the model's limit, or outside 0 to 60 °C, they are no less than 10
 * %, our choice as well.
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
    double ofModel = Math.hypot(0.08 * logarithm, 0.15 * strength);
    double ofStrength = relativeUncertaintyOfIonicStrength * sensitivity(ion, strength, constants);
    return new ActivityCoefficient(
        Math.exp(logarithm),
        Math.hypot(beyond ? Math.max(ofModel, 0.1) : ofModel, ofStrength),
        beyond);
  }
}
