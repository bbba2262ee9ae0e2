package org.restpoint.config.file;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.Station;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;

/**
 * Reads station files.
 *
 * <p>Nothing but the file itself is opened: not the journal, not a port, not a password file.
 */
public final class StationFile {

  /** A station file is at most 1 MiB; a real one has a few kilobytes. */
  private static final int MOST_BYTES = 1 << 20;

  private static final String READABLE = "a station file that can be read";

  private StationFile() {}

  /** What came of reading a file. */
  public sealed interface Outcome {

    /**
     * The whole file is sound.
     *
     * @param station what it says, with all defaults filled in and all paths absolute
     */
    record Understood(Station station) implements Outcome {}

    /**
     * The file is not used.
     *
     * @param problems everything that is wrong with it, by line; never empty
     */
    record Refused(List<Problem> problems) implements Outcome {

      /** Copies the problems. */
      public Refused {
        problems = List.copyOf(problems);
      }
    }
  }

  /**
   * Reads a file. A file that is missing, unreadable or no YAML is refused like one with a wrong
   * key; no content makes this method throw.
   *
   * @param file the file; relative paths in it are resolved against its folder
   * @param vocabulary the analytes it may name
   * @return the station, or every problem
   */
  public static Outcome read(Path file, Vocabulary vocabulary) {
    Path absolute = file.toAbsolutePath().normalize();
    String name = String.valueOf(file.getFileName() == null ? file : file.getFileName());
    Problems problems = new Problems();
    Optional<Station> station =
        bytes(file, name, problems)
            .flatMap(bytes -> new YamlDocument(name, problems).root(bytes))
            .flatMap(root -> station(root, name, absolute, vocabulary, problems));
    if (station.isPresent() && problems.isEmpty()) {
      return new Outcome.Understood(station.get());
    }
    return new Outcome.Refused(problems.byLine());
  }

  private static Optional<Station> station(
      Node root, String name, Path file, Vocabulary vocabulary, Problems problems) {
    if (!(root instanceof MappingNode)) {
      String expected = "a mapping with the keys " + String.join(", ", StationReader.KEYS);
      problems.add(name, Entry.lineOf(root), expected, Entry.root(root, problems).found());
      return Optional.empty();
    }
    Path folder = file.getParent() == null ? file : file.getParent();
    return new StationReader(folder, vocabulary).read(Entry.root(root, problems));
  }

  private static Optional<byte[]> bytes(Path file, String name, Problems problems) {
    if (Files.isDirectory(file)) {
      problems.add(name, 0, READABLE, "a folder");
      return Optional.empty();
    }
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(MOST_BYTES + 1);
      if (bytes.length <= MOST_BYTES) {
        return Optional.of(bytes);
      }
      problems.add(name, 0, "a station file of at most 1 MiB", "a larger file");
    } catch (NoSuchFileException e) {
      problems.add(name, 0, READABLE, "no such file", "check the path: " + file.toAbsolutePath());
    } catch (AccessDeniedException e) {
      problems.add(name, 0, READABLE, "a file this user may not read", "change its permissions");
    } catch (IOException e) {
      problems.add(name, 0, READABLE, Wording.shown(String.valueOf(e.getMessage())));
    }
    return Optional.empty();
  }
}
