package org.restpoint.stability.rest;

/**
 * A potential at rest.
 *
 * @param millivolts the potential
 * @param standardUncertaintyMillivolts how well the rule knows it, k = 1
 * @param forecast whether it is a forecast of where the potential is going
 * @param spreadMillivolts largest minus smallest of the readings it rests on
 */
public record RestingPotential(
    double millivolts,
    double standardUncertaintyMillivolts,
    boolean forecast,
    double spreadMillivolts) {

  public RestingPotential {
    if (!Double.isFinite(millivolts)) {
      throw new IllegalArgumentException("a potential is a finite number, not " + millivolts);
    }
    if (!(standardUncertaintyMillivolts >= 0) || !(spreadMillivolts >= 0)) {
      throw new IllegalArgumentException("an uncertainty and a spread are 0 or above");
    }
  }
}
