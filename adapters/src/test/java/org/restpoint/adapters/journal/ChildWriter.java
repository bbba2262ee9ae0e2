package org.restpoint.adapters.journal;

import static org.restpoint.adapters.journal.Batches.entry;
import static org.restpoint.adapters.journal.Batches.message;
import static org.restpoint.adapters.journal.Batches.reading;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.lang.ProcessBuilder.Redirect;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A process of its own that commits without end and prints each identity once it is committed; a
 * test kills it.
 */
final class ChildWriter implements AutoCloseable {

  private final Process process;
  private final BufferedReader lines;

  private ChildWriter(Process process) {
    this.process = process;
    this.lines =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  /** Starts a child; {@code shellLimit} is put before it in the shell, such as a file size. */
  static ChildWriter start(JournalSettings settings, String shellLimit) throws IOException {
    List<String> java =
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Xmx128m",
            "-cp",
            System.getProperty("java.class.path"),
            ChildWriter.class.getName(),
            settings.file().toString(),
            settings.nativeFolder().toString());
    List<String> command = new ArrayList<>(List.of("sh", "-c", shellLimit + " exec \"$@\"", "sh"));
    command.addAll(java);
    return new ChildWriter(new ProcessBuilder(command).redirectError(Redirect.DISCARD).start());
  }

  /** The next line it prints; fails when it has ended. */
  String line() throws IOException {
    String line = lines.readLine();
    if (line == null) {
      throw new IOException("the child ended early");
    }
    return line;
  }

  /** Everything it goes on to print until it ends. */
  List<String> rest() throws IOException {
    List<String> rest = new ArrayList<>();
    for (String line = lines.readLine(); line != null; line = lines.readLine()) {
      rest.add(line);
    }
    return rest;
  }

  long pid() {
    return process.pid();
  }

  /** SIGKILL; through the handle, which leaves what was printed readable. */
  void kill() throws InterruptedException {
    process.toHandle().destroyForcibly();
    process.waitFor();
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }

  /** The child. */
  public static void main(String[] arguments) {
    Journal journal =
        new Journal(new JournalSettings(Path.of(arguments[0]), Path.of(arguments[1])));
    try {
      journal.start();
      System.out.println("ready");
      for (int i = 0; ; i++) {
        String id = "r-" + i;
        journal.commit(
            new JournalBatch(
                List.of(reading("no3-a", i, i / 10.0)),
                List.of(entry(id, 0, i)),
                List.of(),
                Map.of("no3-a", "{\"last\":\"" + id + "\"}"),
                List.of(message("no3-a/result", id))));
        System.out.println(id);
      }
    } catch (JournalException e) {
      System.out.println(e.kind() + ": " + e.getMessage());
    }
  }
}
