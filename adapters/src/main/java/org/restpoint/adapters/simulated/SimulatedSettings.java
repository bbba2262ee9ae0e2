package org.restpoint.adapters.simulated;

import java.time.Duration;
import java.util.List;

/**
 * What a simulated link sends. Refuses, with an {@link IllegalArgumentException}, an interval that
 * is not a whole number of milliseconds above 0, a speed that is not above 0, a no-data limit or a
 * visit shorter than an interval, and a fault of an electrode where there is a thermometer.
 *
 * @param subject what is read
 * @param interval the time between two readings, as they are stamped
 * @param noDataAfter silence as long as this is told, in simulated time
 * @param faults what goes wrong, and when
 * @param speed how much faster than real time they are sent; 1 for real time
 */
public record SimulatedSettings(
    Subject subject,
    Duration interval,
    Duration noDataAfter,
    List<ScheduledFault> faults,
    double speed) {

  private static final Duration USUAL_NO_DATA = Duration.ofSeconds(30);

  public SimulatedSettings {
    faults = List.copyOf(faults);
    if (interval.toMillis() < 1 || !interval.equals(Duration.ofMillis(interval.toMillis()))) {
      throw new IllegalArgumentException(
          "the interval is not a whole number of milliseconds above 0");
    }
    if (noDataAfter.compareTo(interval) <= 0) {
      throw new IllegalArgumentException("the no-data limit is longer than an interval");
    }
    if (!(speed > 0) || speed == Double.POSITIVE_INFINITY) {
      throw new IllegalArgumentException("the speed is not above 0 and finite");
    }
    if (subject instanceof Subject.Electrode electrode) {
      checkVisits(electrode.visits(), interval);
    } else if (faults.stream().anyMatch(s -> s.fault() instanceof Fault.OfElectrode)) {
      throw new IllegalArgumentException("a thermometer has the faults of its line alone");
    }
  }

  private static void checkVisits(List<Visit> visits, Duration interval) {
    if (visits.stream().flatMap(v -> v.span().stream()).anyMatch(s -> s.compareTo(interval) < 0)) {
      throw new IllegalArgumentException("a visit is not shorter than an interval");
    }
  }

  /** An electrode that is moved by hand, without faults. */
  public static SimulatedSettings of(
      ElectrodeTraits electrode, Beaker first, Duration interval, double speed) {
    return new SimulatedSettings(
        new Subject.Electrode(electrode, List.of(Visit.forGood(first)), Swing.NONE),
        interval,
        usualNoDataAfter(interval),
        List.of(),
        speed);
  }

  /** 30 s, or three intervals where that is longer. */
  public static Duration usualNoDataAfter(Duration interval) {
    Duration three = interval.multipliedBy(3);
    return three.compareTo(USUAL_NO_DATA) > 0 ? three : USUAL_NO_DATA;
  }
}
