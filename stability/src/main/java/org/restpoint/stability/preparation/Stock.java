package org.restpoint.stability.preparation;

import java.util.List;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * A stock solution made by weighing a salt into a flask.
 *
 * <p>{@code c = 10⁶·m·p·(n·A/M)/V}: c in mg/L of the analyte, m the mass of salt in g, p its purity
 * (mass fraction), n·A the mass in g/mol that a mole of the salt brings of the analyte (the ion or
 * the element in it), M the molar mass of the salt in g/mol, V the flask in mL. The molar masses
 * are taken as exact: theirs count for less than 0.01 %, a weighing's for more.
 *
 * <p>Edge results: what is not above zero, a purity above 1 or more analyte than salt is refused
 * with an {@link IllegalArgumentException}. Method: law of propagation ({@link Budget}). Reference:
 * EURACHEM/CITAC Guide CG 4, 3rd edition 2012, example A1.
 *
 * @param saltGrams m, g
 * @param purity p, unit {@code 1}, above zero, at most 1
 * @param saltGramsPerMole M, g/mol, above zero
 * @param analyteGramsPerMole n·A, g/mol, above zero, at most M
 * @param flask V
 */
public record Stock(
    Quantity saltGrams,
    Quantity purity,
    double saltGramsPerMole,
    double analyteGramsPerMole,
    Volume flask) {

  private static final double MILLIGRAMS_PER_LITRE = 1e6;

  public Stock {
    Given.aboveZero(saltGrams, "g");
    Given.aboveZero(purity, "1");
    if (purity.value() > 1) {
      throw new IllegalArgumentException("a purity is at most 1, not " + purity.value());
    }
    if (!(analyteGramsPerMole > 0 && analyteGramsPerMole <= saltGramsPerMole)
        || Double.isInfinite(saltGramsPerMole)) {
      throw new IllegalArgumentException(
          "a mole of salt holds some of the analyte and no more than itself, not "
              + analyteGramsPerMole
              + " g in "
              + saltGramsPerMole);
    }
  }

  /** The concentration of the analyte in mg/L. */
  public Budget milligramsPerLitre() {
    double share = analyteGramsPerMole / saltGramsPerMole;
    return Budget.of(
        "stock",
        "mg/L",
        List.of(saltGrams, purity, flask.quantity()),
        x -> MILLIGRAMS_PER_LITRE * x[0] * x[1] * share / x[2]);
  }
}
