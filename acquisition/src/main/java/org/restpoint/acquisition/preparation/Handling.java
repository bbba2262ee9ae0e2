package org.restpoint.acquisition.preparation;

import java.util.ArrayList;
import java.util.List;
import org.restpoint.acquisition.event.Preparation.Figure;
import org.restpoint.stability.preparation.Adjustment;
import org.restpoint.stability.preparation.Dilution;
import org.restpoint.stability.preparation.DilutionStep;
import org.restpoint.stability.preparation.WaterPortion;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * From a liquid to the vessel in which it is read: diluted first, then poured with its adjustor.
 *
 * @param dilution what it is diluted by
 * @param adjustment how it comes into the vessel, and how the standards do
 */
record Handling(Dilution dilution, Adjustment adjustment) {

  /** The concentration of the liquid before, in the unit of what was read. */
  Quantity before(Quantity read) {
    return quantity(dilution.before(quantity(adjustment.concentration(read))));
  }

  /** The volumes it is reckoned with. */
  List<Figure> figures() {
    List<Figure> figures = new ArrayList<>();
    for (DilutionStep step : dilution.steps()) {
      figures.add(figure("dilution: ", step.aliquot().quantity()));
      figures.add(figure("dilution: ", step.flask().quantity()));
    }
    figures.addAll(figures("sample: ", adjustment.sample()));
    figures.addAll(figures("standard: ", adjustment.standard()));
    return figures;
  }

  private static List<Figure> figures(String whose, WaterPortion portion) {
    return portion.volumes().stream().map(volume -> figure(whose, volume.quantity())).toList();
  }

  static Figure figure(String whose, Quantity quantity) {
    return new Figure(
        whose + quantity.name(), quantity.value(), quantity.unit(), quantity.standardUncertainty());
  }

  private static Quantity quantity(Budget budget) {
    return new Quantity(
        budget.measurand(),
        budget.unit(),
        budget.value(),
        budget.standardUncertainty(),
        budget.effectiveDegreesOfFreedom());
  }
}
