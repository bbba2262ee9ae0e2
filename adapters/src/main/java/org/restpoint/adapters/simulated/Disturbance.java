package org.restpoint.adapters.simulated;

import java.time.Duration;
import java.util.List;

/**
 * The faults that are there at one time.
 *
 * @param unplugged whether the line is pulled out
 * @param silent whether nothing is sent
 * @param readings how many readings an interval has, 1 without a flood, else the largest flood's
 * @param electrode the faults at the electrode, in the order of the list
 */
record Disturbance(
    boolean unplugged, boolean silent, int readings, List<Fault.OfElectrode> electrode) {

  static Disturbance of(List<ScheduledFault> schedule, Duration elapsed) {
    List<Fault> there =
        schedule.stream().filter(s -> s.isThere(elapsed)).map(ScheduledFault::fault).toList();
    return new Disturbance(
        there.stream().anyMatch(Fault.Unplugged.class::isInstance),
        there.stream().anyMatch(Fault.Silent.class::isInstance),
        of(there, Fault.Flood.class).stream().mapToInt(Fault.Flood::times).max().orElse(1),
        of(there, Fault.OfElectrode.class));
  }

  private static <T> List<T> of(List<Fault> faults, Class<T> kind) {
    return faults.stream().filter(kind::isInstance).map(kind::cast).toList();
  }
}
