package org.restpoint.acquisition.workday;

import java.io.IOException;
import java.nio.file.Path;
import org.restpoint.acquisition.service.Service;
import org.restpoint.acquisition.service.Surroundings;
import org.restpoint.acquisition.station.StationTerms;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.config.file.StationFile;

/**
 * The real service in a process of its own, which can be killed, under a clock that the test sets:
 * a day in seconds. Takes the station file, a folder for native libraries and the clock's file;
 * says so when it hears readings.
 */
final class DayService {

  /** What it says then. */
  static final String HEARS = "it hears readings";

  private DayService() {}

  /** Runs until it is killed, or until its standard input ends. */
  public static void main(String[] arguments) throws InterruptedException, IOException {
    Surroundings around =
        new Surroundings(
            Path.of(arguments[1]),
            new SetClock(Path.of(arguments[2])),
            System::nanoTime,
            1,
            event -> {});
    StationFile.Outcome station =
        StationFile.read(Path.of(arguments[0]), StationTerms.vocabulary());
    try (Service service =
        Service.start(((StationFile.Outcome.Understood) station).station(), around)) {
      Link link = service.link(Workday.PROBE).orElseThrow();
      Eventually.become(HEARS, () -> link.check().condition() == LinkHealth.Condition.READING);
      System.out.println(HEARS);
      while (System.in.read() >= 0) {
        // Until nobody is there any more.
      }
    }
  }
}
