package org.restpoint.acquisition.demo;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.JournalException;
import org.restpoint.adapters.journal.JournalSettings;

/**
 * The folder a demo leaves behind: its station file and its journal. A folder that holds something
 * else is refused and stays as it is; of a former demo only what it wrote itself is replaced.
 */
final class DemoFolder {

  private static final String STATION = "station.yaml";
  private static final String JOURNAL = "sample-bench.db";
  private static final List<String> WRITTEN =
      List.of(STATION, JOURNAL, JOURNAL + "-wal", JOURNAL + "-shm");
  private static final String TEMPLATE = template();
  private static final String FIRST_LINE = TEMPLATE.lines().findFirst().orElseThrow();

  private final Path folder;
  private final Path privateFolder;

  DemoFolder(Path folder, Path privateFolder) {
    this.folder = folder;
    this.privateFolder = privateFolder;
  }

  /**
   * Makes it ready.
   *
   * @param port where the broker is to listen; 0 for a free port
   * @return the station file
   * @throws DemoException when the folder is not there to be used
   */
  Path prepare(int port) {
    try {
      if (Files.exists(folder)) {
        clear();
      }
      Files.createDirectories(folder);
      Path station = folder.resolve(STATION);
      Files.writeString(station, TEMPLATE.replace("BROKER-PORT", Integer.toString(port)));
      return station;
    } catch (IOException e) {
      throw DemoException.notStarted(
          "the folder %s cannot be written (%s: %s); name another with --folder"
              .formatted(folder, e.getClass().getSimpleName(), e.getMessage()));
    }
  }

  private void clear() throws IOException {
    if (!Files.isDirectory(folder)) {
      throw refused("is not a folder");
    }
    if (isEmpty()) {
      return;
    }
    if (!isFormerDemo()) {
      throw refused("holds something else than a former demo");
    }
    requireNobodyRunsIt();
    for (String name : WRITTEN) {
      Files.deleteIfExists(folder.resolve(name));
    }
  }

  private boolean isEmpty() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.findAny().isEmpty();
    }
  }

  private boolean isFormerDemo() throws IOException {
    Path station = folder.resolve(STATION);
    if (!Files.isRegularFile(station)) {
      return false;
    }
    byte[] mark = FIRST_LINE.getBytes(StandardCharsets.UTF_8);
    try (InputStream in = Files.newInputStream(station)) {
      return new String(in.readNBytes(mark.length), StandardCharsets.UTF_8).equals(FIRST_LINE);
    }
  }

  private void requireNobodyRunsIt() {
    Path journal = folder.resolve(JOURNAL);
    if (!Files.exists(journal)) {
      return;
    }
    try (Journal former = new Journal(new JournalSettings(journal, privateFolder))) {
      former.start();
    } catch (JournalException e) {
      if (e.kind() == JournalException.Kind.HELD) {
        throw DemoException.notStarted(String.valueOf(e.getMessage()));
      }
      // A journal that cannot be read any more is one more reason to replace it.
    }
  }

  private DemoException refused(String why) {
    return DemoException.notStarted(
        "%s %s, so nothing was touched; name another folder with --folder".formatted(folder, why));
  }

  private static String template() {
    try (InputStream in = DemoFolder.class.getResourceAsStream(STATION)) {
      if (in == null) {
        throw new IllegalStateException("the demo's station file is missing from the program");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
