package org.restpoint.config.file;

import java.util.Collections;
import java.util.Set;
import java.util.TreeSet;

/**
 * A guidance table that a station file may choose by name.
 *
 * @param ofSoil whether its numbers are of dry soil, or else of water
 * @param figures the keys of the figures it may be given: {@code critical}, {@code bulk-density}
 */
public record KnownTable(boolean ofSoil, Set<String> figures) {

  /** Copies the keys in alphabetical order. */
  public KnownTable {
    figures = Collections.unmodifiableSet(new TreeSet<>(figures));
  }
}
