package org.restpoint.acquisition.replay;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.restpoint.acquisition.service.RecordingWiring;
import org.restpoint.adapters.recording.ProbeReading;
import org.restpoint.adapters.recording.RecordingLayout;
import org.restpoint.config.station.LinkSettings.Recording;
import org.restpoint.config.station.Station;

/**
 * One way to read a recording. A file in which the probes have columns of their own is read once
 * for each of them.
 *
 * @param layout how it is written
 * @param owner whose all rows are; empty where the rows say it
 * @param names the station's names by those in the file, where they differ
 * @param only whose rows are read, by the names in the file; empty for all
 */
record RecordingPart(
    RecordingLayout layout, Optional<String> owner, Map<String, String> names, Set<String> only) {

  /** A recording in the service's own form. */
  static final RecordingPart NATIVE =
      new RecordingPart(RecordingLayout.NATIVE, Optional.empty(), Map.of(), Set.of());

  /** Whose rows it reads, for messages. */
  String label() {
    return owner.map(" as of %s"::formatted).orElse("");
  }

  /** The row under the station's name; empty where it is not of this part. */
  Optional<ProbeReading> take(ProbeReading row) {
    if (row.probe().isEmpty()) {
      return owner.map(probe -> new ProbeReading(probe, row.reading()));
    }
    if (!only.isEmpty() && !only.contains(row.probe())) {
      return Optional.empty();
    }
    String known = names.get(row.probe());
    return Optional.of(known == null ? row : new ProbeReading(known, row.reading()));
  }

  /** As the link of one probe reads it. */
  static List<RecordingPart> like(Station station, String probe) {
    Map<String, Recording> links = links(station);
    Recording link = links.get(probe);
    if (link == null) {
      throw new IllegalArgumentException("%s has no recording".formatted(probe));
    }
    return List.of(part(probe, RecordingWiring.layout(link), names(links), Set.of()));
  }

  /**
   * As the links read it that name this very file; as native where none does. A thermometer whose
   * rows stand between an electrode's is read as the electrode is.
   */
  static List<RecordingPart> of(Station station, Path recording) {
    Map<RecordingLayout, Map<String, Recording>> byLayout = new LinkedHashMap<>();
    Map<String, Recording> all = links(station);
    all.values().removeIf(link -> !isSame(link.file(), recording) || link.layout().isEmpty());
    all.forEach(
        (probe, link) ->
            byLayout
                .computeIfAbsent(widest(RecordingWiring.layout(link), all), any -> new TreeMap<>())
                .put(probe, link));
    List<RecordingPart> parts = new ArrayList<>();
    byLayout.forEach(
        (layout, links) -> {
          if (layout.columns().probe().isEmpty()) {
            links.keySet().forEach(probe -> parts.add(part(probe, layout, Map.of(), Set.of())));
          } else {
            Set<String> only = byLayout.size() > 1 ? inFile(links) : Set.of();
            parts.add(new RecordingPart(layout, Optional.empty(), names(links), only));
          }
        });
    return parts.isEmpty() ? List.of(NATIVE) : parts;
  }

  private static RecordingLayout widest(RecordingLayout layout, Map<String, Recording> links) {
    return links.values().stream()
        .map(RecordingWiring::layout)
        .filter(other -> other.columns().probe().isPresent() && other.covers(layout))
        .findFirst()
        .orElse(layout);
  }

  /** The probes of a station whose links read times out of a recording. */
  static Map<String, Recording> links(Station station) {
    Map<String, Recording> links = new TreeMap<>();
    station
        .probes()
        .forEach(
            (name, probe) -> {
              if (probe.link() instanceof Recording recording
                  && RecordingWiring.layout(recording).columns().time().isPresent()) {
                links.put(name, recording);
              }
            });
    return links;
  }

  private static RecordingPart part(
      String probe, RecordingLayout layout, Map<String, String> names, Set<String> only) {
    Optional<String> owner = Optional.of(probe).filter(p -> layout.columns().probe().isEmpty());
    return new RecordingPart(layout, owner, names, only);
  }

  private static Map<String, String> names(Map<String, Recording> links) {
    Map<String, String> names = new HashMap<>();
    links.forEach((probe, link) -> link.knownAs().ifPresent(known -> names.put(known, probe)));
    return names;
  }

  private static Set<String> inFile(Map<String, Recording> links) {
    Set<String> names = new TreeSet<>();
    links.forEach((probe, link) -> names.add(link.knownAs().orElse(probe)));
    return names;
  }

  private static boolean isSame(Path one, Path other) {
    return one.toAbsolutePath().normalize().equals(other.toAbsolutePath().normalize());
  }
}
