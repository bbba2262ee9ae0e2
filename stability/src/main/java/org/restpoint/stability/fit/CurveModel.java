package org.restpoint.stability.fit;

/** A curve with parameters, as {@link CurveFit} needs it: its values and their derivatives. */
public interface CurveModel {

  /** The model's y at the point of that index; may be NaN where the parameters have no meaning. */
  double at(int point, double[] parameters);

  /** Writes the derivatives of {@link #at} by each parameter into {@code derivatives}. */
  void derivatives(int point, double[] parameters, double[] derivatives);
}
