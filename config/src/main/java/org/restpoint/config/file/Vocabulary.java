package org.restpoint.config.file;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The analytes, pH buffers and thermometers a station file may name, so that the reader needs no
 * science.
 *
 * <p>An analyte with two bases or more (nitrate {@code as-N} and {@code as-ion}) leaves a choice:
 * the file must make it, there is no default. With one basis it may be given; with none it may not.
 *
 * @param basesByAnalyte the bases in use for each analyte, by the analyte's name
 * @param inPh the analytes that are measured in pH rather than as a concentration
 * @param buffers the pH buffers whose pH at each temperature is known
 * @param anions the analytes whose charge is negative: only ions of one sign interfere with each
 *     other
 * @param thermometers knows of a thermometer by its figures whether there can be such a one
 * @param tables the guidance tables that a file may choose by name
 */
public record Vocabulary(
    Map<String, Set<String>> basesByAnalyte,
    Set<String> inPh,
    Set<String> buffers,
    Set<String> anions,
    ThermometerCheck thermometers,
    Map<String, KnownTable> tables) {

  /**
   * Copies the names in alphabetical order, so that messages do not depend on the caller's map, and
   * checks that what is measured in pH is an analyte.
   */
  public Vocabulary {
    TreeMap<String, Set<String>> copy = new TreeMap<>();
    basesByAnalyte.forEach(
        (analyte, bases) -> copy.put(analyte, Collections.unmodifiableSet(new TreeSet<>(bases))));
    basesByAnalyte = Collections.unmodifiableMap(copy);
    inPh = Collections.unmodifiableSet(new TreeSet<>(inPh));
    buffers = Collections.unmodifiableSet(new TreeSet<>(buffers));
    anions = Collections.unmodifiableSet(new TreeSet<>(anions));
    tables = Collections.unmodifiableMap(new TreeMap<>(tables));
    if (!basesByAnalyte.keySet().containsAll(inPh)) {
      throw new IllegalArgumentException("measured in pH, but no analyte: " + inPh);
    }
  }

  /** A vocabulary in which every thermometer can be, and no table is known. */
  public Vocabulary(
      Map<String, Set<String>> basesByAnalyte,
      Set<String> inPh,
      Set<String> buffers,
      Set<String> anions) {
    this(basesByAnalyte, inPh, buffers, anions, thermometer -> Optional.empty(), Map.of());
  }

  /**
   * A vocabulary in which nothing is measured in pH and all ions are of one sign.
   *
   * @param basesByAnalyte the bases in use for each analyte, by the analyte's name
   */
  public Vocabulary(Map<String, Set<String>> basesByAnalyte) {
    this(basesByAnalyte, Set.of(), Set.of(), Set.of());
  }

  List<String> analytes() {
    return List.copyOf(basesByAnalyte.keySet());
  }

  /** Whether two analytes have charges of one sign. */
  boolean sameSign(String one, String other) {
    return anions.contains(one) == anions.contains(other);
  }

  List<String> basesOf(String analyte) {
    return List.copyOf(basesByAnalyte.getOrDefault(analyte, Set.of()));
  }

  /** Every basis of any analyte, in alphabetical order. */
  List<String> bases() {
    return basesByAnalyte.values().stream().flatMap(Set::stream).distinct().sorted().toList();
  }
}
