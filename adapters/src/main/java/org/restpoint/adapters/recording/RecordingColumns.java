package org.restpoint.adapters.recording;

import java.util.EnumMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;

/**
 * Where in a row everything stands; other columns are passed over. Refuses, with an {@link
 * IllegalArgumentException}, to read two things from one column, a date without a time of day, and
 * to read neither a potential nor a temperature.
 *
 * @param date the date, where it has a column of its own
 * @param time the time, or the time of day beside a date; empty only where a growing file is
 *     followed and rows are stamped on arrival
 * @param probe whose reading it is; empty where all rows are one probe's
 * @param potential the potential
 * @param temperature the temperature
 */
public record RecordingColumns(
    Optional<Column> date,
    Optional<Column> time,
    Optional<Column> probe,
    Optional<Column> potential,
    Optional<Column> temperature) {

  public RecordingColumns {
    if (potential.isEmpty() && temperature.isEmpty()) {
      throw new IllegalArgumentException("a row gives a potential, a temperature or both");
    }
    if (date.isPresent() && time.isEmpty()) {
      throw new IllegalArgumentException("a date is no time without a time of day");
    }
    Map<Role, Column> all = byRole(date, time, probe, potential, temperature);
    if (new HashSet<>(all.values()).size() < all.size()) {
      throw new IllegalArgumentException("one column gives one thing");
    }
  }

  /** The same without times. */
  RecordingColumns withoutTime() {
    return new RecordingColumns(Optional.empty(), Optional.empty(), probe, potential, temperature);
  }

  /** What stands in which column, in the order in which it is written above. */
  Map<Role, Column> byRole() {
    return byRole(date, time, probe, potential, temperature);
  }

  private static Map<Role, Column> byRole(
      Optional<Column> date,
      Optional<Column> time,
      Optional<Column> probe,
      Optional<Column> potential,
      Optional<Column> temperature) {
    Map<Role, Column> all = new EnumMap<>(Role.class);
    date.ifPresent(column -> all.put(Role.DATE, column));
    time.ifPresent(column -> all.put(Role.TIME, column));
    probe.ifPresent(column -> all.put(Role.PROBE, column));
    potential.ifPresent(column -> all.put(Role.POTENTIAL, column));
    temperature.ifPresent(column -> all.put(Role.TEMPERATURE, column));
    return all;
  }
}
