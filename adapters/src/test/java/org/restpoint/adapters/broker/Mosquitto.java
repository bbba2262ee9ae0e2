package org.restpoint.adapters.broker;

import static org.assertj.core.api.Assertions.fail;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Assumptions;

/**
 * A real Mosquitto process on a free loopback port, for one test. Everything it writes goes to the
 * folder it is given. A machine without Mosquitto skips the test and says so; where the environment
 * variable {@code CI} is set, the test fails instead.
 */
public final class Mosquitto implements AutoCloseable {

  private static final List<String> PROGRAM_FOLDERS =
      List.of("/usr/sbin", "/usr/local/sbin", "/usr/bin", "/usr/local/bin", "/opt/homebrew/sbin");
  private static final long START_LIMIT_SECONDS = 10;
  private static final long GLANCE_NANOS = 5_000_000;

  private final Path program;
  private final Path folder;
  private final int port;
  private final StringBuilder settings = new StringBuilder();
  private @Nullable Process process;

  private Mosquitto(Path program, Path folder, int port) {
    this.program = program;
    this.folder = folder;
    this.port = port;
    settings
        .append("listener %d 127.0.0.1%n".formatted(port))
        .append("persistence true%n".formatted())
        .append("persistence_location %s/%n".formatted(folder))
        .append("log_dest file %s%n".formatted(log()))
        .append("log_type all%n".formatted())
        .append("connection_messages true%n".formatted());
    if ("root".equals(System.getProperty("user.name"))) {
      settings.append("user root%n".formatted());
    }
  }

  /** A broker that lets everybody in; not yet started. */
  public static Mosquitto open(Path folder) {
    return prepared(folder).with("allow_anonymous true");
  }

  /** A broker that asks for this user and password; not yet started. */
  public static Mosquitto guarded(Path folder, String user, String password) {
    Mosquitto made = prepared(folder);
    Path passwords = folder.resolve("passwords");
    try {
      Process maker =
          new ProcessBuilder(
                  required("mosquitto_passwd").toString(),
                  "-b",
                  "-c",
                  passwords.toString(),
                  user,
                  password)
              .redirectErrorStream(true)
              .redirectOutput(folder.resolve("mosquitto_passwd.log").toFile())
              .start();
      if (!maker.waitFor(START_LIMIT_SECONDS, TimeUnit.SECONDS) || maker.exitValue() != 0) {
        fail("mosquitto_passwd did not make %s", passwords);
      }
    } catch (IOException e) {
      throw new IllegalStateException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
    return made.with("allow_anonymous false").with("password_file " + passwords);
  }

  private static Mosquitto prepared(Path folder) {
    return new Mosquitto(required("mosquitto"), folder, freePort());
  }

  private static Path required(String name) {
    Optional<Path> found =
        PROGRAM_FOLDERS.stream()
            .map(place -> Path.of(place, name))
            .filter(Files::isExecutable)
            .findFirst();
    if (found.isEmpty() && System.getenv("CI") != null) {
      fail("%s is not installed, and CI is set: install Debian's package mosquitto", name);
    }
    Assumptions.assumeTrue(
        found.isPresent(),
        "NOT TESTED against a real broker: %s is not installed (apt-get install mosquitto)"
            .formatted(name));
    return found.orElseThrow();
  }

  /** Adds a line to the configuration; before the start. */
  public Mosquitto with(String line) {
    settings.append(line).append(System.lineSeparator());
    return this;
  }

  /** Starts it, or starts it again on the same port, and waits until it accepts. */
  public Mosquitto start() {
    try {
      Path configuration = folder.resolve("mosquitto.conf");
      Files.writeString(configuration, settings);
      process =
          new ProcessBuilder(program.toString(), "-c", configuration.toString())
              .redirectErrorStream(true)
              .redirectOutput(folder.resolve("mosquitto.out").toFile())
              .start();
      awaitAccepting();
      return this;
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private void awaitAccepting() {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(START_LIMIT_SECONDS);
    while (System.nanoTime() < deadline && running().isAlive()) {
      try (Socket socket = new Socket()) {
        socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), port), 1_000);
        return;
      } catch (IOException e) {
        // Not yet: it takes a few milliseconds.
        LockSupport.parkNanos(GLANCE_NANOS);
      }
    }
    fail("mosquitto did not start; its log:%n%s", logText());
  }

  /** Where clients connect to. */
  public URI url() {
    return URI.create("tcp://127.0.0.1:" + port);
  }

  /** Its port on loopback. */
  public int port() {
    return port;
  }

  /** Asks it to end: it saves its sessions first. */
  public void stop() {
    running().destroy();
    awaitEnd();
  }

  /** Ends it at once, with nothing saved (SIGKILL). */
  public void kill() {
    running().destroyForcibly();
    awaitEnd();
  }

  private void awaitEnd() {
    try {
      if (!running().waitFor(START_LIMIT_SECONDS, TimeUnit.SECONDS)) {
        fail("mosquitto did not end");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  /** Lets it save its sessions and messages now (SIGUSR1), and waits until the file is there. */
  public void save() {
    Path saved = folder.resolve("mosquitto.db");
    try {
      Files.deleteIfExists(saved);
      signal("USR1");
      long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(START_LIMIT_SECONDS);
      while (!Files.exists(saved)) {
        if (System.nanoTime() > deadline) {
          fail("mosquitto did not save; its log:%n%s", logText());
        }
        LockSupport.parkNanos(GLANCE_NANOS);
      }
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Stops it in the middle of what it does (SIGSTOP): its sockets stay open and silent. */
  public void freeze() {
    signal("STOP");
  }

  /** Lets it go on (SIGCONT). */
  public void thaw() {
    signal("CONT");
  }

  /** The log so far. */
  public String logText() {
    try (Stream<String> lines = Files.lines(log())) {
      return String.join(System.lineSeparator(), lines.toList());
    } catch (IOException e) {
      return "no log: " + e.getMessage();
    }
  }

  @Override
  public void close() {
    if (process != null && process.isAlive()) {
      kill();
    }
  }

  private Path log() {
    return folder.resolve("mosquitto.log");
  }

  private void signal(String name) {
    try {
      Process sender =
          new ProcessBuilder("kill", "-" + name, Long.toString(running().pid())).start();
      if (!sender.waitFor(START_LIMIT_SECONDS, TimeUnit.SECONDS) || sender.exitValue() != 0) {
        fail("signal %s could not be sent", name);
      }
    } catch (IOException e) {
      throw new IllegalStateException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private Process running() {
    if (process == null) {
      throw new IllegalStateException("mosquitto was not started");
    }
    return process;
  }

  private static int freePort() {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
