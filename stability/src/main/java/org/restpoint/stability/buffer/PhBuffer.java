package org.restpoint.stability.buffer;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A pH buffer: a solution whose pH is known from how it is made and how warm it is. Known by name
 * are four primary standards, for which amounts of substance are per kilogram of water:
 *
 * <ul>
 *   <li>{@code phthalate}: potassium hydrogen phthalate, 0.05 mol; pH 4.005 at 25 °C. Moulds within
 *       weeks;
 *   <li>{@code phosphate}: potassium dihydrogen and disodium hydrogen phosphate, 0.025 mol each; pH
 *       6.865;
 *   <li>{@code borax}: disodium tetraborate, 0.01 mol; pH 9.180. Takes up carbon dioxide from air
 *       and loses pH by it; the solid dries out in a warm room and then weighs in too much of
 *       itself;
 *   <li>{@code carbonate}: sodium hydrogen carbonate and sodium carbonate, 0.025 mol each; pH
 *       10.012. Takes up carbon dioxide as borax does.
 * </ul>
 *
 * <p>Their values are those of IUPAC's table for every 5 °C from 0 to 50 °C, with straight lines
 * between ({@link TemperatureTable}). They bend so little that a line over 5 K is off by no more
 * than 0.001, and one over 10 K by no more than 0.003.
 *
 * <p>Edge results: outside 0 to 50 °C, or for no number, there is no value. A name that is not
 * known is empty: a bought buffer that is only called 4, 7 or 10 is another solution with another
 * table, even where it has the same pH at 25 °C.
 *
 * <p>Reference: R. P. Buck et al., Measurement of pH. Definition, standards, and procedures (IUPAC
 * Recommendations 2002), Pure Appl. Chem. 74 (2002) 2169, doi 10.1351/pac200274112169, for 5 to 50
 * °C. It builds on the National Bureau of Standards, which goes on to 0 °C: R. G. Bates, J. Res.
 * Natl. Bur. Stand. 66A (1962) 179, doi 10.6028/jres.066A.016, and for carbonate B. R. Staples, R.
 * G. Bates, J. Res. Natl. Bur. Stand. 73A (1969) 37, doi 10.6028/jres.073A.004.
 *
 * @param name what station files call it
 * @param recipe how it is made, for a person
 * @param table its pH over temperature
 */
public record PhBuffer(String name, String recipe, TemperatureTable table) {

  /**
   * Standard uncertainty of a primary buffer's pH on the conventional scale, k = 1: half of the
   * 0.004 (k = 2) that Buck et al. 2002 give for the primary method, as far as remembered. It
   * counts where every pH compared is on this scale, and says nothing of a solution made up
   * carelessly.
   */
  public static final double STANDARD_UNCERTAINTY = 0.002;

  /**
   * Standard uncertainty of the same pH as minus the logarithm of the hydrogen ion's activity, k =
   * 1: half of the 0.01 (k = 2) that Buck et al. 2002 give for the convention of Bates and
   * Guggenheim, as far as remembered. It is common to all buffers.
   */
  public static final double STANDARD_UNCERTAINTY_OF_ACTIVITY = 0.005;

  private static final List<PhBuffer> KNOWN =
      List.of(
          new PhBuffer(
              "phthalate",
              "10.21 g of potassium hydrogen phthalate KHC8H4O4, dried 2 h at 110 °C, in 1 kg of"
                  + " water",
              TemperatureTable.every(
                  0, 5, 4.000, 3.998, 3.997, 3.998, 4.001, 4.005, 4.011, 4.018, 4.027, 4.038,
                  4.050)),
          new PhBuffer(
              "phosphate",
              "3.40 g of potassium dihydrogen phosphate KH2PO4 and 3.55 g of disodium hydrogen"
                  + " phosphate Na2HPO4, both dried 2 h at 110 °C, in 1 kg of water free of carbon"
                  + " dioxide",
              TemperatureTable.every(
                  0, 5, 6.984, 6.951, 6.923, 6.900, 6.881, 6.865, 6.853, 6.844, 6.838, 6.834,
                  6.833)),
          new PhBuffer(
              "borax",
              "3.81 g of disodium tetraborate decahydrate Na2B4O7.10H2O, not dried, in 1 kg of"
                  + " water free of carbon dioxide; keep it closed from air",
              TemperatureTable.every(
                  0, 5, 9.464, 9.395, 9.332, 9.276, 9.225, 9.180, 9.139, 9.102, 9.068, 9.038,
                  9.010)),
          new PhBuffer(
              "carbonate",
              "2.10 g of sodium hydrogen carbonate NaHCO3, not heated, and 2.65 g of sodium"
                  + " carbonate Na2CO3, dried 2 h at 270 °C, in 1 kg of water free of carbon"
                  + " dioxide; keep it closed from air",
              TemperatureTable.every(
                  0, 5, 10.317, 10.245, 10.179, 10.118, 10.062, 10.012, 9.966, 9.925, 9.889, 9.857,
                  9.828)));

  /** The primary standards known by name. */
  public static List<PhBuffer> known() {
    return KNOWN;
  }

  /** The buffer of that name, if it is known. */
  public static Optional<PhBuffer> named(String name) {
    return KNOWN.stream().filter(buffer -> buffer.name.equals(name)).findFirst();
  }

  /** Its pH at a temperature, °C; empty outside its table. */
  public OptionalDouble ph(double celsius) {
    return table.at(celsius);
  }
}
