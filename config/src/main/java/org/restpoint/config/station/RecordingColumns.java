package org.restpoint.config.station;

import java.util.Optional;

/**
 * Which columns of a recording are read.
 *
 * @param date the date, where it has a column of its own
 * @param time the time, or the time of day beside a date; empty only with stamps on arrival
 * @param probe whose reading a row is; empty where all rows are one probe's
 * @param potential the number of the potential; empty for a thermometer
 * @param temperature the number of the temperature, where there is one
 */
public record RecordingColumns(
    Optional<Place> date,
    Optional<Place> time,
    Optional<Place> probe,
    Optional<Place> potential,
    Optional<Place> temperature) {

  /** Which column it is. */
  public sealed interface Place {

    /**
     * The one with this heading.
     *
     * @param heading as it stands in the header
     */
    record Headed(String heading) implements Place {}

    /**
     * The one at this place.
     *
     * @param number counted from 1
     */
    record Numbered(int number) implements Place {}
  }
}
