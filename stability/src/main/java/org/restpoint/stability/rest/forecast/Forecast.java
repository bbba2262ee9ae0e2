package org.restpoint.stability.rest.forecast;

/**
 * Where a potential is going.
 *
 * @param millivolts the potential at rest, as far as is known
 * @param standardUncertaintyMillivolts how well, k = 1
 */
public record Forecast(double millivolts, double standardUncertaintyMillivolts) {

  public Forecast {
    if (!Double.isFinite(millivolts) || !(standardUncertaintyMillivolts >= 0)) {
      throw new IllegalArgumentException("a forecast is a finite potential with an uncertainty");
    }
  }
}
