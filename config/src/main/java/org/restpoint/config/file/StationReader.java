package org.restpoint.config.file;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.restpoint.config.station.Broker;
import org.restpoint.config.station.ChosenTable;
import org.restpoint.config.station.HttpAddress;
import org.restpoint.config.station.LogStyle;
import org.restpoint.config.station.Probe;
import org.restpoint.config.station.StandardSolution;
import org.restpoint.config.station.Station;

/** Reads the top of a station file and hands each part to its reader. */
final class StationReader {

  /** The keys at the top. */
  static final List<String> KEYS =
      List.of("station", "broker", "journal", "http", "logs", "standards", "probes", "guidance");

  private static final Pattern NAME = Pattern.compile("[A-Za-z0-9_-]{1,64}");
  private static final String A_NAME = "a name of up to 64 letters, digits, - and _";

  private final Path folder;
  private final Vocabulary vocabulary;

  /** A reader that resolves relative paths against the folder. */
  StationReader(Path folder, Vocabulary vocabulary) {
    this.folder = folder;
    this.vocabulary = vocabulary;
  }

  /** The station, or empty where a part that it cannot be without was refused. */
  Optional<Station> read(Entry root) {
    Optional<Section> top = root.section("a mapping with the keys " + String.join(", ", KEYS));
    if (top.isEmpty()) {
      return Optional.empty();
    }
    Section keys = top.get();
    keys.only(KEYS);
    Optional<String> name = keys.need("station", A_NAME).flatMap(StationReader::name);
    Optional<Broker> broker =
        keys.need("broker", BrokerReader.A_BROKER)
            .flatMap(entry -> new BrokerReader(folder).read(entry));
    Optional<Path> journal = keys.find("journal").flatMap(entry -> path(entry, folder));
    Optional<HttpAddress> http = keys.find("http").flatMap(HttpReader::read);
    LogStyle logs =
        keys.find("logs")
            .flatMap(entry -> entry.word(List.of("plain", "json")))
            .map(word -> word.equals("json") ? LogStyle.JSON : LogStyle.PLAIN)
            .orElse(LogStyle.PLAIN);
    Standards standards =
        keys.find("standards").map(e -> Standards.read(e, vocabulary)).orElse(Standards.NONE);
    Map<String, Probe> probes =
        keys.need("probes", ProbesReader.PROBES)
            .map(entry -> new ProbesReader(folder, vocabulary, standards).read(entry))
            .orElse(Map.of());
    Map<String, ChosenTable> guidance =
        keys.find("guidance")
            .map(entry -> new GuidanceReader(vocabulary).read(entry))
            .orElse(Map.of());
    if (name.isEmpty() || broker.isEmpty()) {
      return Optional.empty();
    }
    Map<String, StandardSolution> solutions = new LinkedHashMap<>();
    standards.solutions().forEach(solution -> solutions.put(solution.name(), solution));
    Path journalFile = journal.orElseGet(() -> folder.resolve(name.get() + ".db"));
    return Optional.of(
        new Station(
            name.get(), broker.get(), journalFile, http, logs, solutions, probes, guidance));
  }

  /** A name for topics, files and metrics. */
  static Optional<String> name(Entry entry) {
    Optional<String> text = entry.freeText(A_NAME);
    if (text.isPresent() && !NAME.matcher(text.get()).matches()) {
      entry.refuse(A_NAME);
      return Optional.empty();
    }
    return text;
  }

  /** Tells a key that is no name where a name is the key. */
  static boolean isName(String key, Entry entry) {
    if (NAME.matcher(key).matches()) {
      return true;
    }
    entry.refuse(A_NAME, key.isBlank() ? "a blank key" : Wording.shown(key));
    return false;
  }

  /** A file, relative ones in the folder. */
  static Optional<Path> path(Entry entry, Path folder) {
    Optional<String> text = entry.freeText("the path of a file");
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      if (!text.get().isBlank()) {
        return Optional.of(folder.resolve(text.get()).normalize());
      }
    } catch (InvalidPathException e) {
      // Told below like an empty path.
    }
    entry.refuse("the path of a file");
    return Optional.empty();
  }
}
