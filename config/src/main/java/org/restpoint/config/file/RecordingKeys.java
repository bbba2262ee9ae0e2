package org.restpoint.config.file;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.LinkSettings.Following;
import org.restpoint.config.station.LinkSettings.Recording;
import org.restpoint.config.station.OwnTimes;
import org.restpoint.config.station.RecordingLayout;

/** Reads a link to a recording. */
final class RecordingKeys {

  /** The keys that only a recording that is followed has. */
  static final List<String> FOLLOWING =
      List.of("from", "stamp", "time-within", "late-by", "no-data-after");

  /** The keys of a recording. */
  static final List<String> KEYS =
      Stream.of(
              List.of("file"), RecordingLayoutReader.KEYS, List.of("known-as", "follow"), FOLLOWING)
          .flatMap(List::stream)
          .toList();

  private static final String A_NAME = "what the file calls the probe, 1 to 100 characters";
  private static final int LONGEST_NAME = 100;
  private static final Duration USUAL_NO_DATA = Duration.ofMinutes(5);

  private final Section keys;
  private final Path folder;
  private final boolean thermometer;

  /**
   * A reader for one link.
   *
   * @param thermometer whether the probe is a thermometer rather than an electrode
   */
  RecordingKeys(Section keys, Path folder, boolean thermometer) {
    this.keys = keys;
    this.folder = folder;
    this.thermometer = thermometer;
  }

  Optional<LinkSettings> read() {
    keys.only(KEYS);
    Optional<Path> file =
        keys.need("file", "the path of a recording")
            .flatMap(value -> StationReader.path(value, folder));
    Optional<String> knownAs = keys.find("known-as").flatMap(RecordingKeys::name);
    boolean followed = keys.find("follow").flatMap(Entry::flag).orElse(false);
    boolean arrival = stamp(followed).equals("arrival");
    boolean written = RecordingLayoutReader.KEYS.stream().anyMatch(keys::has);
    Optional<RecordingLayout> layout =
        written
            ? new RecordingLayoutReader(keys, thermometer, followed, arrival).read()
            : Optional.empty();
    Optional<Following> following = followed ? following(arrival) : Optional.empty();
    if (written && layout.isEmpty()) {
      return Optional.empty();
    }
    return file.map(path -> new Recording(path, layout, knownAs, following));
  }

  private String stamp(boolean followed) {
    if (!followed) {
      for (String key : FOLLOWING) {
        keys.find(key)
            .ifPresent(value -> value.refuse(key + " only with follow: true", value.found()));
      }
      return "recorded";
    }
    return keys.find("stamp")
        .flatMap(value -> value.word(List.of("recorded", "arrival")))
        .orElse("recorded");
  }

  private Optional<Following> following(boolean arrival) {
    boolean fromStart =
        keys.find("from")
            .flatMap(value -> value.word(List.of("end", "start")))
            .filter("start"::equals)
            .isPresent();
    if (arrival) {
      if (fromStart) {
        keys.find("from")
            .ifPresent(value -> value.refuse("end with stamp: arrival, which knows no old times"));
      }
      for (String key : OwnTimesReader.KEYS) {
        keys.find(key).ifPresent(value -> value.refuse(key + " only with stamp: recorded"));
      }
    }
    OwnTimes times = OwnTimesReader.read(keys);
    Duration noData = keys.find("no-data-after").flatMap(Allowed.WAIT::span).orElse(USUAL_NO_DATA);
    return Optional.of(
        new Following(fromStart, Optional.of(times).filter(any -> !arrival), noData));
  }

  private static Optional<String> name(Entry entry) {
    Optional<String> text = entry.freeText(A_NAME).map(String::strip);
    if (text.filter(name -> name.isEmpty() || name.length() > LONGEST_NAME).isPresent()) {
      entry.refuse(A_NAME);
      return Optional.empty();
    }
    return text;
  }
}
