package org.restpoint.stability.interference;

/** The charges of two ions that an electrode takes for each other: of one sign. */
final class Charges {

  private Charges() {}

  /** Refuses a charge number that is 0 or beyond ±4. */
  static void check(String what, int charge) {
    if (charge == 0 || Math.abs(charge) > 4) {
      throw new IllegalArgumentException(what + " is -4 to 4 and not 0, not " + charge);
    }
  }

  /** z_i/z_j, above zero; refuses an interfering ion of the other sign. */
  static double ratio(int primaryCharge, String interferent, int interferentCharge) {
    check("the charge of the primary ion", primaryCharge);
    if (Integer.signum(primaryCharge) != Integer.signum(interferentCharge)) {
      throw new IllegalArgumentException(
          interferent
              + " of charge "
              + interferentCharge
              + " cannot stand in for an ion of charge "
              + primaryCharge
              + ": a selectivity coefficient is for two ions of one sign, take it off the list");
    }
    return (double) primaryCharge / interferentCharge;
  }
}
