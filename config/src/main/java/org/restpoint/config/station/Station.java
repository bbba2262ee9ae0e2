package org.restpoint.config.station;

import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * A whole station file, checked.
 *
 * @param name the station's name: letters, digits, {@code -} and {@code _}; it stands in every
 *     topic
 * @param broker where messages go
 * @param journal the journal's file, resolved against the station file's folder
 * @param http where metrics and health are served; empty for none
 * @param logs how the log is written
 * @param standards the standards by name, in the file's order
 * @param recipes how samples are prepared, by name, in the file's order
 * @param probes the probes by name, in the file's order
 * @param guidance the tables that say what results mean, by the name chosen for each, in the file's
 *     order; none is applied but these
 */
public record Station(
    String name,
    Broker broker,
    Path journal,
    Optional<HttpAddress> http,
    LogStyle logs,
    Map<String, StandardSolution> standards,
    Map<String, Recipe> recipes,
    Map<String, Probe> probes,
    Map<String, ChosenTable> guidance) {

  /** Copies the maps in their order. */
  public Station {
    standards = Collections.unmodifiableMap(new LinkedHashMap<>(standards));
    recipes = Collections.unmodifiableMap(new LinkedHashMap<>(recipes));
    probes = Collections.unmodifiableMap(new LinkedHashMap<>(probes));
    guidance = Collections.unmodifiableMap(new LinkedHashMap<>(guidance));
  }
}
