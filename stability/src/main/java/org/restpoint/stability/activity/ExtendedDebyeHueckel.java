package org.restpoint.stability.activity;

/**
 * The Debye–Hückel equation for ions that take up room.
 *
 * <p>{@code log10 γ = −A·z²·√I/(1 + B·å·√I)}, with A and B of water ({@link
 * DebyeHueckelConstants}), z the charge number, å the {@linkplain Ion#sizePicometres() size} of the
 * ion and I the ionic strength in mol/L.
 *
 * <p>Edge results: I = 0 is γ = 1; γ falls as I rises, without end, though most measured ones rise
 * again past about 0.5 mol/L.
 *
 * <p>Reference: P. Debye, E. Hückel, Phys. Z. 24 (1923) 185; J. Kielland, J. Am. Chem. Soc. 59
 * (1937) 1675, whose table ends at 0.1 mol/L.
 */
public record ExtendedDebyeHueckel() implements ActivityModel {

  @Override
  public double validToMolesPerLitre() {
    return 0.1;
  }

  @Override
  public double naturalLogarithm(Ion ion, double ionicStrength, DebyeHueckelConstants constants) {
    double root = Math.sqrt(ionicStrength);
    return -limitingSlope(ion, constants) * root / (1 + reach(ion, constants) * root);
  }

  @Override
  public double sensitivity(Ion ion, double ionicStrength, DebyeHueckelConstants constants) {
    double root = Math.sqrt(ionicStrength);
    double room = 1 + reach(ion, constants) * root;
    return -limitingSlope(ion, constants) * root / (2 * room * room);
  }

  private static double limitingSlope(Ion ion, DebyeHueckelConstants constants) {
    return Math.log(10) * constants.a() * ion.charge() * ion.charge();
  }

  private static double reach(Ion ion, DebyeHueckelConstants constants) {
    return constants.perPicometre() * ion.sizePicometres();
  }
}
