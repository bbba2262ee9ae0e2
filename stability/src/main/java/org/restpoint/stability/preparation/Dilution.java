package org.restpoint.stability.preparation;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.MeasurementModel;
import org.restpoint.stability.uncertainty.Source;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * A chain of dilutions, one step after another.
 *
 * <p>{@code f = Π V_flask/V_aliquot}; a concentration before the chain is {@code c₀ = f·c}, one
 * after it {@code c = c₀/f}. V in mL, f a pure number, 1 or above.
 *
 * <p>Each volume of each step is a source of its own: a pipette or a flask used twice counts as two
 * independent ones. Their common calibration error would cancel between a flask and an aliquot of
 * the same piece and add up between two aliquots; filling and reading, which are new each time,
 * dominate for glassware of class A.
 *
 * <p>Edge results: no step at all, f = 1 with no uncertainty. Method: law of propagation ({@link
 * Budget}). Reference: JCGM 100:2008, 5.1.2; EURACHEM/CITAC Guide CG 4, 3rd edition 2012, example
 * A1.
 *
 * @param steps in order, may be empty
 */
public record Dilution(List<DilutionStep> steps) {

  public Dilution {
    steps = List.copyOf(steps);
  }

  /** A chain of these steps. */
  public static Dilution of(DilutionStep... steps) {
    return new Dilution(List.of(steps));
  }

  /** The factor f with its uncertainty. */
  public Budget factor() {
    return Budget.of("dilution factor", "1", sources(), x -> factor(x, 0));
  }

  /**
   * The concentration that was there before the dilution.
   *
   * @param diluted what was measured after it, in any unit of concentration
   */
  public Budget before(Quantity diluted) {
    return budget(diluted, x -> x[0] * factor(x, 1));
  }

  /**
   * The concentration that the dilution makes.
   *
   * @param concentrated what was there before it, in any unit of concentration
   */
  public Budget after(Quantity concentrated) {
    return budget(concentrated, x -> x[0] / factor(x, 1));
  }

  private Budget budget(Quantity concentration, MeasurementModel model) {
    List<Source> all = new ArrayList<>(List.of(concentration));
    all.addAll(sources());
    return Budget.of("concentration", concentration.unit(), all, model);
  }

  private List<Quantity> sources() {
    List<Quantity> sources = new ArrayList<>();
    for (DilutionStep step : steps) {
      String use = "step " + (sources.size() / 2 + 1);
      Stream.of(step.aliquot(), step.flask())
          .map(volume -> volume.of(use).quantity())
          .forEach(sources::add);
    }
    return sources;
  }

  private double factor(double[] inputs, int first) {
    double factor = 1;
    for (int i = 0; i < steps.size(); i++) {
      factor *= inputs[first + 2 * i + 1] / inputs[first + 2 * i];
    }
    return factor;
  }
}
