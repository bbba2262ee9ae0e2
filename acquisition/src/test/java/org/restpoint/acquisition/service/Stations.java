package org.restpoint.acquisition.service;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.restpoint.acquisition.station.StationTerms;
import org.restpoint.config.file.StationFile;
import org.restpoint.config.station.Station;

/** Stations for tests, by the words of a station file. */
public final class Stations {

  private static final String BROOK =
      """
      station: brook
      broker: { embedded: { port: 0 } }
      standards:
        low:  { concentration: 5 mg/L,   basis: as-N }
        high: { concentration: 100 mg/L, basis: as-N }
      probes:
        no3-a:
          analyte: nitrate
          basis: as-N
          link: { mqtt: { topic: brook/no3, payload: number } }
          temperature: { fixed: 22 Cel }
          calibrate: { standards: [low, high] }
      """;

  /** For a brook whose electrode is at rest after three readings. */
  static final String SOON = "settle: { rule: consecutive, readings: 3, give-up-after: 10 s }";

  private Stations() {}

  /**
   * A brook with one nitrate electrode, no3-a.
   *
   * @param more further keys of the probe, each with its value
   */
  static Station brook(Path folder, String... more) {
    StringBuilder text = new StringBuilder(BROOK);
    for (String line : more) {
      text.append("    ").append(line).append('\n');
    }
    return read(folder, text.toString());
  }

  /** Writes the file and reads it as the commands do. */
  public static Station read(Path folder, String text) {
    try {
      Path file = Files.writeString(folder.resolve("station.yaml"), text);
      StationFile.Outcome outcome = StationFile.read(file, StationTerms.vocabulary());
      if (outcome instanceof StationFile.Outcome.Understood understood) {
        return understood.station();
      }
      throw new AssertionError(outcome.toString());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
