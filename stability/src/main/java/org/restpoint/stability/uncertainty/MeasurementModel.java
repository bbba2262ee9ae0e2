package org.restpoint.stability.uncertainty;

/** How the measurand follows from the input quantities: f in y = f(x1, …, xN). */
@FunctionalInterface
public interface MeasurementModel {

  /**
   * The measurand.
   *
   * @param inputs the values of all sources in their order, those of a joint source one after
   *     another; not to be changed
   */
  double measurand(double[] inputs);
}
