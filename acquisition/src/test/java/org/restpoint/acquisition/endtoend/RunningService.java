package org.restpoint.acquisition.endtoend;

import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * {@code restpoint run} in a process of its own. What it writes is read at once by threads of its
 * own, so the process is never held up, and kept for the test.
 */
final class RunningService implements AutoCloseable {

  private static final Duration PATIENCE = Duration.ofSeconds(60);

  /** {@code 2026-04-02T14:03:00.123Z INFO message [Logger]}. */
  private static final Pattern LOG_LINE =
      Pattern.compile("\\S+Z (?<level>[A-Z]+) +(?<message>.*) \\[(?<logger>\\w+)]");

  private static final Pattern READY = Pattern.compile("ready: .*, broker (?<broker>\\S+)");
  private static final Pattern HTTP = Pattern.compile("metrics and health at (?<url>\\S+)");

  private final Process process;
  private final List<String> lines = new ArrayList<>();
  private final CompletableFuture<String> output;
  private boolean ended;

  private RunningService(Process process) {
    this.process = process;
    this.output = CompletableFuture.supplyAsync(this::readOutput, work -> begin(work, "output"));
    begin(this::readLog, "log");
  }

  /** Runs a station and does not wait for anything. */
  static RunningService start(Path station) {
    return start(Jar.command("run", station));
  }

  /** Runs any command that runs a station. */
  static RunningService start(List<String> command) {
    try {
      RunningService service = new RunningService(new ProcessBuilder(command).start());
      service.process.getOutputStream().close();
      return service;
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Runs a station and waits until it says that it is ready. */
  static RunningService ready(Path station) {
    RunningService service = start(station);
    try {
      service.match(READY);
      return service;
    } catch (AssertionError e) {
      service.close();
      throw e;
    }
  }

  private static void begin(Runnable work, String name) {
    Thread thread = new Thread(work, "service-" + name);
    thread.setDaemon(true);
    thread.start();
  }

  private String readOutput() {
    try {
      return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      return "unreadable: " + e.getMessage();
    }
  }

  private void readLog() {
    try (BufferedReader err = process.errorReader(StandardCharsets.UTF_8)) {
      for (String line = err.readLine(); line != null; line = err.readLine()) {
        note(line);
      }
    } catch (IOException e) {
      note("the log ends here: " + e.getMessage());
    } finally {
      end();
    }
  }

  private synchronized void note(String line) {
    lines.add(line);
    notifyAll();
  }

  private synchronized void end() {
    ended = true;
    notifyAll();
  }

  /** Waits for a message in the log; gives its first that fits. Fails when none comes. */
  String message(Predicate<String> wanted) {
    return first(line -> message(line).filter(wanted)).orElseThrow(() -> missing("a message"));
  }

  /** Waits for a line as it stands. */
  String line(Predicate<String> wanted) {
    return first(line -> Optional.of(line).filter(wanted)).orElseThrow(() -> missing("a line"));
  }

  /** Waits for a message that holds this pattern somewhere. */
  Matcher match(Pattern pattern) {
    return first(line -> message(line).map(pattern::matcher).filter(Matcher::find))
        .orElseThrow(() -> missing(pattern.pattern()));
  }

  private interface Look<T> {
    Optional<T> at(String line);
  }

  private synchronized <T> Optional<T> first(Look<T> look) {
    long deadline = System.nanoTime() + PATIENCE.toNanos();
    int seen = 0;
    try {
      while (true) {
        while (seen < lines.size()) {
          Optional<T> found = look.at(lines.get(seen++));
          if (found.isPresent()) {
            return found;
          }
        }
        long left = TimeUnit.NANOSECONDS.toMillis(deadline - System.nanoTime());
        if (ended || left <= 0) {
          return Optional.empty();
        }
        wait(left);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private AssertionError missing(String what) {
    return new AssertionError(
        "%s never came; the log:%n%s".formatted(what, String.join("\n", log())));
  }

  private static Optional<String> message(String line) {
    Matcher parts = LOG_LINE.matcher(line);
    return parts.matches() ? Optional.of(parts.group("message")) : Optional.empty();
  }

  /** The messages of the log so far, without time, level and logger. */
  List<String> messages() {
    return log().stream().flatMap(line -> message(line).stream()).toList();
  }

  /** All lines on standard error so far, as they stand. */
  synchronized List<String> log() {
    return List.copyOf(lines);
  }

  /** The number of its process. */
  long pid() {
    return process.pid();
  }

  /** Where its broker is, by its own word. */
  URI broker() {
    return URI.create(match(READY).group("broker"));
  }

  /** Where it serves metrics and health, by its own word. */
  URI http() {
    return URI.create(match(HTTP).group("url"));
  }

  /** SIGTERM; the exit status, which must come within the 5 s that are promised. */
  int terminate() {
    process.destroy();
    return exitStatus(Duration.ofSeconds(5));
  }

  /** SIGKILL. */
  void kill() {
    process.destroyForcibly();
    exitStatus(PATIENCE);
  }

  /** The exit status of one that ends by itself. */
  int exitStatus() {
    return exitStatus(PATIENCE);
  }

  private int exitStatus(Duration limit) {
    try {
      if (!process.waitFor(limit.toMillis(), TimeUnit.MILLISECONDS)) {
        throw missing("the end within " + limit);
      }
      awaitLastLine();
      return process.exitValue();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private synchronized void awaitLastLine() throws InterruptedException {
    long deadline = System.nanoTime() + PATIENCE.toNanos();
    while (!ended && System.nanoTime() < deadline) {
      wait(PATIENCE.toMillis());
    }
  }

  /** Its standard output; only after its end. */
  String output() {
    return output.join();
  }

  @Override
  public void close() {
    if (process.isAlive()) {
      kill();
    }
  }
}
