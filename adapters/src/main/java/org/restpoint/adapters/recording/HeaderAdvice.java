package org.restpoint.adapters.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.restpoint.adapters.recording.TextForm.Delimiter;
import org.restpoint.adapters.text.Excerpt;

/** What to write into the station file for a header that does not fit, guessed from its words. */
final class HeaderAdvice {

  /** Guesses are common words for each thing, those that say most first. */
  private static final Map<String, List<String>> WORDS = words();

  private static final int MOST_SHOWN = 20;

  private HeaderAdvice() {}

  private static Map<String, List<String>> words() {
    Map<String, List<String>> words = new LinkedHashMap<>();
    words.put("date", List.of("date", "datum", "day"));
    words.put("time", List.of("timestamp", "time", "uhrzeit", "zeit", "clock", "when", "seconds"));
    words.put("probe", List.of("probe", "sensor", "channel", "electrode", "kanal"));
    words.put("millivolts", List.of("millivolt", "mv", "potential", "emf"));
    words.put("celsius", List.of("celsius", "temp", "\u00B0c", "degc"));
    return words;
  }

  /** What is expected where the header should stand. */
  static String expected(RecordingLayout layout) {
    return layout.isNative()
        ? "the header " + RecordingReader.HEADER
        : "a header with the columns "
            + layout.columns().byRole().values().stream()
                .map(HeaderAdvice::named)
                .collect(Collectors.joining(", "));
  }

  /** What is wrong with a header and what to do about it; empty where it fits. */
  static Optional<String> misfit(RecordingLayout layout, List<String> header) {
    Delimiter delimiter = layout.text().delimiter();
    if (layout.isNative()) {
      boolean fits = header.equals(RecordingLayout.NATIVE_HEADER);
      return fits
          ? Optional.empty()
          : Optional.of(
              "expected %s, found %s. %s"
                  .formatted(
                      expected(layout),
                      Excerpt.of(String.join(",", header)),
                      of(header, delimiter)));
    }
    List<String> faults = BoundColumns.faults(layout.columns(), header);
    return faults.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "the header has %s. %s".formatted(String.join(", ", faults), of(header, delimiter)));
  }

  private static String named(Column column) {
    return column instanceof Column.Headed headed
        ? quoted(headed.heading())
        : "number " + ((Column.Numbered) column).number();
  }

  /** The columns of a header that was read with another delimiter, and the keys that fit it. */
  static String of(List<String> header, Delimiter readWith) {
    String line = String.join(String.valueOf(readWith.character()), header);
    Delimiter delimiter = delimiter(line, readWith);
    List<String> columns =
        delimiter == readWith
            ? header
            : Arrays.stream(line.split(String.valueOf(delimiter.character()), -1))
                .map(String::strip)
                .toList();
    return "Its columns are %s. Say under link.recording which is which: %scolumns: { %s }%s"
        .formatted(
            list(columns),
            delimiter == Delimiter.COMMA
                ? ""
                : "delimiter: %s, ".formatted(delimiter.name().toLowerCase(Locale.ROOT)),
            mapping(columns),
            letters(line));
  }

  private static Delimiter delimiter(String line, Delimiter readWith) {
    Delimiter most = readWith;
    for (Delimiter delimiter : Delimiter.values()) {
      most = count(line, delimiter) > count(line, most) ? delimiter : most;
    }
    return most;
  }

  private static long count(String line, Delimiter delimiter) {
    return line.chars().filter(c -> c == delimiter.character()).count();
  }

  private static String list(List<String> columns) {
    List<String> shown =
        new ArrayList<>(columns.stream().limit(MOST_SHOWN).map(HeaderAdvice::quoted).toList());
    if (columns.size() > MOST_SHOWN) {
      shown.add("and %d more".formatted(columns.size() - MOST_SHOWN));
    }
    return String.join(", ", shown);
  }

  private static String mapping(List<String> columns) {
    List<String> left = new ArrayList<>(columns);
    Map<String, String> found = new LinkedHashMap<>();
    WORDS.forEach(
        (key, words) -> {
          for (String word : words) {
            for (String column : left) {
              if (!found.containsKey(key) && column.toLowerCase(Locale.ROOT).contains(word)) {
                found.put(key, column);
              }
            }
          }
          left.remove(found.get(key));
        });
    if (found.containsKey("date") && !found.containsKey("time")) {
      found.put("time", String.valueOf(found.remove("date")));
    }
    List<String> keys = new ArrayList<>();
    for (String key : WORDS.keySet()) {
      String column = found.get(key);
      if (column != null) {
        keys.add(key + ": " + quoted(column));
      } else if (key.equals("time") || key.equals("millivolts")) {
        keys.add(key + ": ...");
      }
    }
    return String.join(", ", keys);
  }

  private static String letters(String line) {
    if (line.indexOf('\uFFFD') >= 0) {
      return "; it is not UTF-8, so add encoding: latin-1";
    }
    return line.indexOf('\0') >= 0 ? "; it looks like encoding: utf-16" : "";
  }

  /** A heading as YAML reads it back, in ASCII. */
  static String quoted(String heading) {
    return '"' + Excerpt.of(heading).replace("\"", "\\\"") + '"';
  }
}
