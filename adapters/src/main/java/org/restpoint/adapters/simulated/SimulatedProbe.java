package org.restpoint.adapters.simulated;

import java.time.Instant;
import java.util.List;
import org.restpoint.stability.reading.Reading;

/** What is read, one reading after the other, at times that do not go back. */
interface SimulatedProbe {

  /**
   * What the instrument shows.
   *
   * @param time a whole millisecond
   * @param faults those that are there
   */
  Reading reading(Instant time, List<Fault.OfElectrode> faults);

  /**
   * The same between two readings, in a flood; it leaves the later ones as they would have been.
   */
  Reading extraReading(Instant time, List<Fault.OfElectrode> faults);
}
