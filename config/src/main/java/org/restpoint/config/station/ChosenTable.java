package org.restpoint.config.station;

import java.util.List;

/**
 * A guidance table that the station file chose, and for what.
 *
 * @param name what the file calls it
 * @param kinds the kinds of samples whose results it is asked about, at least one of {@link #KINDS}
 * @param table the table
 */
public record ChosenTable(String name, List<String> kinds, TableSettings table) {

  /** A sample of soil. */
  public static final String SOIL = "soil";

  /** Water of a well, from which people may drink. */
  public static final String WELL_WATER = "well water";

  /** What kinds of samples there are. */
  public static final List<String> KINDS =
      List.of(SOIL, "tile water", WELL_WATER, "surface water", "other");

  /** Checks the kinds. */
  public ChosenTable {
    kinds = List.copyOf(kinds);
    if (kinds.isEmpty() || !KINDS.containsAll(kinds)) {
      throw new IllegalArgumentException("kinds of samples: " + kinds);
    }
  }
}
