package org.restpoint.stability.guidance;

import java.time.LocalDate;
import java.util.Optional;

/**
 * For what a table holds.
 *
 * @param region where
 * @param season when in the year, or of which crop
 * @param depth from where in the soil a sample must be; empty where any will do
 * @param published when, as its source says; empty where that is not said
 * @param validUntil the last day it holds; empty where no end is known
 */
public record Scope(
    String region,
    String season,
    Optional<Depth> depth,
    Optional<String> published,
    Optional<LocalDate> validUntil) {

  /** All of it in a row, for a person. */
  public String text() {
    return region
        + "; "
        + season
        + depth.map(layer -> "; soil from " + layer.text()).orElse("")
        + published.map(when -> "; " + when).orElse("")
        + validUntil.map(day -> "; valid until " + day).orElse("; no end of validity is given");
  }
}
