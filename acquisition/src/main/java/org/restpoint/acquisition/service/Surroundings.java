package org.restpoint.acquisition.service;

import java.nio.file.Path;
import java.time.InstantSource;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.restpoint.acquisition.event.Event;

/**
 * What a service finds around it.
 *
 * @param privateFolder a folder of its own, where native libraries are unpacked
 * @param clock the time of day
 * @param nanos a clock that only runs forward, in ns
 * @param simulationSpeed how many times faster than the clock on the wall simulated electrodes run
 * @param witness hears of each event once it is in the journal; on the engine's thread
 */
public record Surroundings(
    Path privateFolder,
    InstantSource clock,
    LongSupplier nanos,
    double simulationSpeed,
    Consumer<Event> witness) {

  /** The real ones. */
  public static Surroundings real() {
    return new Surroundings(
        PrivateFolder.path(), InstantSource.system(), System::nanoTime, 1, event -> {});
  }
}
