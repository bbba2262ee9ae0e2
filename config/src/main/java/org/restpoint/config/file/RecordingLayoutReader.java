package org.restpoint.config.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.config.station.RecordingLayout;
import org.restpoint.config.station.RecordingLayout.Delimiter;
import org.restpoint.config.station.RecordingLayout.Encoding;
import org.restpoint.config.station.RecordingTime;

/** Reads how a recording is written. */
final class RecordingLayoutReader {

  /** The keys that say how it is written. */
  static final List<String> KEYS =
      Stream.of(
              List.of("delimiter", "decimal", "encoding", "comment", "header", "columns"),
              NumbersReader.KEYS,
              List.of("time", "zone", "missing"))
          .flatMap(List::stream)
          .toList();

  private static final String COMMENT_MARKS = "#%!/*'>";
  private static final String A_COMMENT =
      "none or one of "
          + String.join(" ", COMMENT_MARKS.split("", -1)).strip()
          + " in quotes, e.g. \"#\"";
  private static final String MISSING = "a text or a list of up to 20 that stand for no value";
  private static final int MOST_MISSING = 20;

  private final Section keys;
  private final boolean thermometer;
  private final boolean followed;
  private final boolean arrival;

  /**
   * A reader for one link.
   *
   * @param thermometer whether the probe is a thermometer rather than an electrode
   * @param followed whether the recording is followed while it grows
   * @param arrival whether readings are stamped on arrival, so that times are not read
   */
  RecordingLayoutReader(Section keys, boolean thermometer, boolean followed, boolean arrival) {
    this.keys = keys;
    this.thermometer = thermometer;
    this.followed = followed;
    this.arrival = arrival;
  }

  Optional<RecordingLayout> read() {
    Delimiter delimiter =
        keys.find("delimiter")
            .flatMap(value -> value.word(words(Delimiter.values())))
            .map(word -> Delimiter.valueOf(constant(word)))
            .orElse(Delimiter.COMMA);
    boolean comma =
        keys.find("decimal")
            .flatMap(value -> value.word(List.of("point", "comma")))
            .filter("comma"::equals)
            .isPresent();
    Encoding encoding =
        keys.find("encoding")
            .flatMap(value -> value.word(words(Encoding.values())))
            .map(word -> Encoding.valueOf(constant(word)))
            .orElse(Encoding.UTF_8);
    Optional<Character> comment =
        keys.has("comment")
            ? keys.find("comment").flatMap(RecordingLayoutReader::comment)
            : Optional.of('#');
    boolean header =
        keys.find("header")
            .flatMap(value -> value.word(List.of("first-row", "none")))
            .filter("none"::equals)
            .isEmpty();
    if (!header && comma && delimiter == Delimiter.COMMA) {
      keys.find("decimal")
          .ifPresent(
              value ->
                  value.refuse(
                      "point, as a comma stands between the values and there is no header"));
    }
    Optional<RecordingTime> time = new RecordingTimeReader(keys).read();
    if (followed
        && !arrival
        && time.filter(RecordingTime.SecondsFromZero.class::isInstance).isPresent()) {
      keys.find("time")
          .ifPresent(
              value ->
                  value.refuse(
                      "a time of day, or stamp: arrival, as follow needs to know when", "seconds"));
    }
    List<String> missing =
        keys.find("missing").map(RecordingLayoutReader::missing).orElse(List.of());
    boolean parts =
        time.filter(
                form ->
                    !(form instanceof RecordingTime.Iso || form instanceof RecordingTime.Pattern))
            .isEmpty();
    Optional<RecordingColumnsReader.Read> columns =
        keys.need("columns", RecordingColumnsReader.A_MAPPING)
            .flatMap(
                value ->
                    new RecordingColumnsReader(keys, thermometer, header, !arrival, parts)
                        .read(value));
    return columns.flatMap(
        read ->
            time.map(
                form ->
                    new RecordingLayout(
                        delimiter,
                        comma,
                        encoding,
                        comment,
                        header,
                        read.columns(),
                        read.numbers(),
                        form,
                        missing)));
  }

  private static List<String> words(Enum<?>[] constants) {
    return Stream.of(constants)
        .map(constant -> constant.name().toLowerCase(Locale.ROOT).replace('_', '-'))
        .toList();
  }

  private static String constant(String word) {
    return word.toUpperCase(Locale.ROOT).replace('-', '_');
  }

  private static Optional<Character> comment(Entry entry) {
    Optional<String> text = entry.text(A_COMMENT);
    if (text.isEmpty() || text.get().equals("none")) {
      return Optional.empty();
    }
    if (text.get().length() != 1 || COMMENT_MARKS.indexOf(text.get().charAt(0)) < 0) {
      entry.refuse(A_COMMENT);
      return Optional.empty();
    }
    return Optional.of(text.get().charAt(0));
  }

  private static List<String> missing(Entry entry) {
    List<Entry> items = entry.quietItems();
    if (items.isEmpty()) {
      return entry.freeText(MISSING).map(String::strip).stream().toList();
    }
    if (items.size() > MOST_MISSING) {
      entry.refuse(MISSING, items.size() + " of them");
    }
    List<String> texts = new ArrayList<>();
    for (Entry item : items) {
      item.freeText("a text that stands for no value").map(String::strip).ifPresent(texts::add);
    }
    return texts;
  }
}
