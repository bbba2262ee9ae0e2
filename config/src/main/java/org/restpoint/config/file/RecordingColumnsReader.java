package org.restpoint.config.file;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.config.station.Numbers;
import org.restpoint.config.station.RecordingColumns;
import org.restpoint.config.station.RecordingColumns.Place;

/** Reads which columns of a recording give what. */
final class RecordingColumnsReader {

  /** What a column may give beside a number. */
  static final List<String> WORDS = List.of("date", "time", "probe");

  /** What a column may give. */
  static final List<String> KEYS =
      Stream.concat(WORDS.stream(), NumbersReader.NAMES.stream()).toList();

  static final String A_MAPPING =
      "a mapping from what is read to its column, e.g. { time: Time, millivolts: 3 }";

  private static final String A_PLACE = "a column's heading, or its number from 1 to 1000";
  private static final String A_NUMBER = "a column's number from 1 to 1000, as there is no header";
  private static final int MOST_COLUMNS = 1_000;

  private final Section link;
  private final boolean thermometer;
  private final boolean header;
  private final boolean needsTime;
  private final boolean parts;

  /**
   * A reader for one link.
   *
   * @param link the link's keys
   * @param header whether the file has a header
   * @param needsTime whether times are read
   * @param parts whether a time may stand in two columns
   */
  RecordingColumnsReader(
      Section link, boolean thermometer, boolean header, boolean needsTime, boolean parts) {
    this.link = link;
    this.thermometer = thermometer;
    this.header = header;
    this.needsTime = needsTime;
    this.parts = parts;
  }

  /**
   * What is read.
   *
   * @param columns where it stands
   * @param numbers what the numbers are
   */
  record Read(RecordingColumns columns, Numbers numbers) {}

  Optional<Read> read(Entry entry) {
    Optional<Section> section = entry.section(A_MAPPING);
    if (section.isEmpty()) {
      return Optional.empty();
    }
    Section keys = section.get();
    keys.only(KEYS);
    Map<String, Place> places = new HashMap<>();
    keys.children()
        .forEach(
            (name, child) -> {
              if (KEYS.contains(name)) {
                place(child).ifPresent(place -> put(places, name, place, child));
              }
            });
    boolean timed = needsTime || keys.has("date");
    if (timed) {
      keys.need("time", A_PLACE);
    }
    keys.find("date")
        .filter(date -> !parts)
        .ifPresent(date -> date.refuse("date only with time: iso or a pattern"));
    Optional<Numbers> numbers =
        new NumbersReader(link, thermometer)
            .read(NumbersReader.NAMES.stream().filter(keys::has).toList(), entry, "column");
    Optional<RecordingColumns> columns =
        Optional.of(
            new RecordingColumns(
                find(places, List.of("date")),
                find(places, List.of("time")),
                find(places, List.of("probe")),
                find(places, NumbersReader.POTENTIALS),
                find(places, NumbersReader.TEMPERATURES)));
    boolean whole = places.size() == keys.children().size() && (!timed || keys.has("time"));
    return whole
        ? numbers.flatMap(given -> columns.map(found -> new Read(found, given)))
        : Optional.empty();
  }

  private static Optional<Place> find(Map<String, Place> places, List<String> names) {
    return names.stream()
        .flatMap(name -> Optional.ofNullable(places.get(name)).stream())
        .findFirst();
  }

  private static void put(Map<String, Place> places, String name, Place place, Entry entry) {
    places.forEach(
        (other, taken) -> {
          if (taken.equals(place)) {
            entry.refuse("a column of its own", entry.found() + ", already read as " + other);
          }
        });
    places.put(name, place);
  }

  private Optional<Place> place(Entry entry) {
    Optional<String> heading = entry.quietText();
    if (!header || heading.isEmpty()) {
      if (entry.isPlainNumberOrFlag()) {
        return entry.whole(1, MOST_COLUMNS).map(Long::intValue).map(Place.Numbered::new);
      }
      entry.refuse(header ? A_PLACE : A_NUMBER);
      return Optional.empty();
    }
    if (heading.get().isBlank()) {
      entry.refuse(A_PLACE);
      return Optional.empty();
    }
    return heading.map(String::strip).map(Place.Headed::new);
  }
}
