package org.restpoint.config.file;

import java.util.Objects;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.Probe;
import org.restpoint.config.station.StandardSolution;
import org.restpoint.config.station.Station;

/** Finds by name what a station file describes; what is not there fails the test. */
final class Named {

  static Probe probe(Station station, String name) {
    return Objects.requireNonNull(station.probes().get(name), name);
  }

  static Electrode electrode(Station station, String name) {
    return probe(station, name).electrode().orElseThrow();
  }

  static StandardSolution.Value.OfConcentration concentration(Station station, String name) {
    return (StandardSolution.Value.OfConcentration) standard(station, name).value();
  }

  static StandardSolution standard(Station station, String name) {
    return Objects.requireNonNull(station.standards().get(name), name);
  }

  private Named() {}
}
