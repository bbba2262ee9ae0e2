package org.restpoint.acquisition.preparation;

import java.util.List;
import org.restpoint.acquisition.event.Preparation.Figure;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * What a recipe makes of what was read.
 *
 * @param value the amount with its standard uncertainty, k = 1, and its unit
 * @param kind of what it is
 * @param text what was done, in plain words with its figures
 * @param figures the figures it was reckoned with
 * @param remarks what a person has to know about it
 */
public record Reckoned(
    Quantity value, String kind, String text, List<Figure> figures, List<Reason> remarks) {

  public Reckoned {
    figures = List.copyOf(figures);
    remarks = List.copyOf(remarks);
  }
}
