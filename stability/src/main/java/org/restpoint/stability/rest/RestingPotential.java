package org.restpoint.stability.rest;

import java.util.Optional;

/**
 * A potential at rest.
 *
 * @param millivolts the potential
 * @param standardUncertaintyMillivolts how well the rule knows it, k = 1
 * @param forecast whether it is a forecast of where the potential is going
 * @param spreadMillivolts largest minus smallest of the readings it rests on
 * @param drift how it moved over these readings; empty with fewer than two instants
 * @param creeping whether that drift, over the next five minutes, would lead out of the tolerance
 */
public record RestingPotential(
    double millivolts,
    double standardUncertaintyMillivolts,
    boolean forecast,
    double spreadMillivolts,
    Optional<Drift> drift,
    boolean creeping) {

  public RestingPotential {
    if (!Double.isFinite(millivolts)) {
      throw new IllegalArgumentException("a potential is a finite number, not " + millivolts);
    }
    if (!(standardUncertaintyMillivolts >= 0) || !(spreadMillivolts >= 0)) {
      throw new IllegalArgumentException("an uncertainty and a spread are 0 or above");
    }
  }
}
