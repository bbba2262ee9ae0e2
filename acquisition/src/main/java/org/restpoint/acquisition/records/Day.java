package org.restpoint.acquisition.records;

import java.time.LocalDate;
import java.util.Comparator;

/**
 * A day of a probe.
 *
 * @param date by the clock of the zone that was asked for
 * @param probe the probe's name
 */
record Day(LocalDate date, String probe) implements Comparable<Day> {

  private static final Comparator<Day> IN_ORDER =
      Comparator.comparing(Day::date).thenComparing(Day::probe);

  @Override
  public int compareTo(Day other) {
    return IN_ORDER.compare(this, other);
  }
}
