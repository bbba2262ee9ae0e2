package org.restpoint.acquisition.probe;

import java.util.Optional;
import java.util.OptionalLong;
import org.restpoint.stability.rest.ForecastDetector;
import org.restpoint.stability.rest.RestDetector;
import org.restpoint.stability.rest.forecast.ResponseSeen;

/**
 * A rule of rest at its beginning, with what it knows of the electrode.
 *
 * @param detector the rule at work
 * @param responseReadings how many readings taught how the electrode responds; empty where nothing
 *     is learnt
 */
record Watch(RestDetector detector, OptionalLong responseReadings) {

  /** What its readings have told of the electrode's response; empty where nothing is learnt. */
  Optional<ResponseSeen> response() {
    return responseReadings.isPresent() && detector instanceof ForecastDetector forecast
        ? forecast.response()
        : Optional.empty();
  }
}
