package org.restpoint.acquisition.demo;

import java.time.Instant;
import org.restpoint.acquisition.station.StationTerms;
import org.restpoint.adapters.simulated.Beaker;
import org.restpoint.adapters.simulated.SimulatedLink;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.Quantity;

/**
 * The simulated bench: somebody's hands, which move the electrode from beaker to beaker.
 *
 * @param link the electrode
 * @param electrode what the station knows of it
 */
record Bench(SimulatedLink link, Electrode electrode) {

  /** Puts the electrode into a solution; gives the time at the bench. */
  Instant put(Solution solution) {
    double molesPerLitre =
        StationTerms.molesPerLitre(new Quantity(solution.milligramsPerLitre(), "mg/L"), electrode);
    return link.immerse(new Beaker(molesPerLitre, solution.celsius()));
  }
}
