package org.restpoint.stability.activity;

/**
 * Davies' equation, the same for all ions of a charge.
 *
 * <p>{@code log10 γ = −A·z²·(√I/(1 + √I) − 0.3·I)}, with A of water ({@link
 * DebyeHueckelConstants}), z the charge number and I the ionic strength in mol/L. It takes no size
 * of the ion.
 *
 * <p>Edge results: I = 0 is γ = 1; γ is lowest near 0.4 mol/L and rises from there, past 1 above
 * about 2 mol/L, where it means nothing.
 *
 * <p>Reference: C. W. Davies, Ion Association, Butterworths 1962, p. 41; the coefficient was 0.2 in
 * C. W. Davies, J. Chem. Soc. (1938) 2093.
 */
public record Davies() implements ActivityModel {

  private static final double LINEAR = 0.3;

  @Override
  public double validToMolesPerLitre() {
    return 0.5;
  }

  @Override
  public double naturalLogarithm(Ion ion, double ionicStrength, DebyeHueckelConstants constants) {
    double root = Math.sqrt(ionicStrength);
    return -limitingSlope(ion, constants) * (root / (1 + root) - LINEAR * ionicStrength);
  }

  @Override
  public double sensitivity(Ion ion, double ionicStrength, DebyeHueckelConstants constants) {
    double root = Math.sqrt(ionicStrength);
    double room = 1 + root;
    return -limitingSlope(ion, constants) * (root / (2 * room * room) - LINEAR * ionicStrength);
  }

  private static double limitingSlope(Ion ion, DebyeHueckelConstants constants) {
    return Math.log(10) * constants.a() * ion.charge() * ion.charge();
  }
}
