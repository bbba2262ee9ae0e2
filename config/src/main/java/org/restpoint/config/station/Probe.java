package org.restpoint.config.station;

import java.util.Optional;

/**
 * A probe.
 *
 * @param name letters, digits, {@code -} and {@code _}; it stands in topics and metrics
 * @param link how its readings come in
 * @param electrode what it measures; empty for a thermometer that only serves other probes
 * @param publishRaw whether each reading goes out on {@code {probe}/raw}
 */
public record Probe(
    String name, LinkSettings link, Optional<Electrode> electrode, boolean publishRaw) {}
