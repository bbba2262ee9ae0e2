package org.restpoint.config.file;

import java.util.Optional;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.Probe;

/**
 * A probe as far as it was understood.
 *
 * @param name its name
 * @param link its link, unless that was refused
 * @param complete whether nothing that it needs was refused besides the link
 * @param electrode what it measures; empty for a thermometer and where it was refused
 * @param publishRaw whether each reading goes out
 * @param port the serial port that its link opens, where it opens one
 * @param thermometer where the probe that gives its temperature stands
 */
record ProbeDraft(
    String name,
    Optional<LinkSettings> link,
    boolean complete,
    Optional<Electrode> electrode,
    boolean publishRaw,
    Optional<PortUse> port,
    Optional<Entry> thermometer) {

  /** The probe, unless something it needs was refused. */
  Optional<Probe> probe() {
    return complete
        ? link.map(settings -> new Probe(name, settings, electrode, publishRaw))
        : Optional.empty();
  }
}
