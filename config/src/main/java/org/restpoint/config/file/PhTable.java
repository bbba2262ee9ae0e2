package org.restpoint.config.file;

import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/** Reads the pH of a standard: one number, or one for each of some temperatures. */
final class PhTable {

  /** What a standard's pH looks like. */
  static final String A_PH =
      "a number from 0 to 14, or numbers by temperature like { 20 Cel: 7.02, 25 Cel: 7.00 }";

  private static final int FEWEST = 2;
  private static final int MOST = 20;
  private static final PlainNumber ONE = new PlainNumber(0, true, 14, A_PH);

  private PhTable() {}

  static Optional<Double> one(Entry entry) {
    return ONE.read(entry);
  }

  /** The pH by temperature in °C, or empty where a row was refused. */
  static Optional<NavigableMap<Double, Double>> table(Entry entry) {
    return entry.section(A_PH).flatMap(PhTable::table);
  }

  private static Optional<NavigableMap<Double, Double>> table(Section rows) {
    NavigableMap<Double, Double> table = new TreeMap<>();
    Map<Double, String> first = new TreeMap<>();
    boolean sound = true;
    for (Map.Entry<String, Entry> row : rows.children().entrySet()) {
      Entry key = rows.keyEntry(row.getKey());
      Optional<Double> celsius = Allowed.WATER.number(key);
      Optional<Double> ph = PlainNumber.PH.read(row.getValue());
      String earlier = celsius.map(at -> first.putIfAbsent(at, key.found())).orElse(null);
      if (earlier != null) {
        key.refuse("each temperature once", key.found() + " after " + earlier);
      }
      if (celsius.isEmpty() || ph.isEmpty() || earlier != null) {
        sound = false;
      } else {
        table.put(celsius.get(), ph.get());
      }
    }
    int given = rows.children().size();
    if (given < FEWEST || given > MOST) {
      String one = given == 1 ? " temperature" : " temperatures";
      rows.self().refuse(FEWEST + " to " + MOST + " temperatures with a pH each", given + one);
      return Optional.empty();
    }
    return sound ? Optional.of(table) : Optional.empty();
  }
}
