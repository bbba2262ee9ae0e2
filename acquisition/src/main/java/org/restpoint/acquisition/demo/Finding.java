package org.restpoint.acquisition.demo;

import org.restpoint.acquisition.event.Result;

/**
 * A result beside what the simulation knows and the station does not.
 *
 * @param what what was read
 * @param result what the station found
 * @param really nitrate as N that was really in it, mg/L
 */
record Finding(String what, Result result, double really) {

  /** Whether the number lies within its own expanded uncertainty of the truth. */
  boolean holds() {
    return result
        .concentration()
        .filter(amount -> Math.abs(amount.value() - really) <= amount.uncertainty())
        .isPresent();
  }

  String found() {
    return result.concentration().map(Sentences::amount).orElse("no number");
  }

  String flags() {
    return result.flags().isEmpty() ? "none" : String.join(", ", result.flags());
  }
}
