package org.restpoint.acquisition.service;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.restpoint.acquisition.station.StationTerms;
import org.restpoint.config.file.StationFile;
import org.restpoint.config.station.Station;

/** Stations for tests, by the words of a station file. */
public final class Stations {

  private Stations() {}

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
