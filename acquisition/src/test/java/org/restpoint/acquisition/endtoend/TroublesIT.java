package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.broker.Mosquitto;
import org.restpoint.adapters.serial.PseudoTerminal;

/**
 * What goes wrong around a service: the very words in its log or at the terminal, the exit status,
 * and that it is ready all the same where it can be.
 */
@EnabledOnOs(OS.LINUX)
@Timeout(300)
class TroublesIT {

  @TempDir private Path folder;

  private static void assertNoTrace(List<String> log) {
    assertThat(log).noneMatch(line -> line.startsWith("\tat ") || line.contains("Exception"));
  }

  private static void assertSaid(RunningService service, int exitStatus, String message) {
    assertThat(service.exitStatus()).isEqualTo(exitStatus);
    assertThat(service.log()).contains("restpoint: " + message);
    assertNoTrace(service.log());
    assertThat(service.output()).isEmpty();
  }

  @Test
  void portsThatCannotBeReadAndADeadBrokerAreToldOnceAndDoNotKeepItFromBeingReady()
      throws Exception {
    Path absent = folder.resolve("ttyAbsent");
    Path file = Files.createFile(folder.resolve("notes.txt"));
    URI broker = Loopback.deadBroker();
    try (PseudoTerminal meter = new PseudoTerminal()) {
      Process holder = new ProcessBuilder("flock", meter.path().toString(), "cat").start();
      try (BufferedReader echo = holder.inputReader(StandardCharsets.US_ASCII)) {
        holder.getOutputStream().write("held\n".getBytes(StandardCharsets.US_ASCII));
        holder.getOutputStream().flush();
        assertThat(echo.readLine()).isEqualTo("held");
        Path station =
            BenchStation.plain(
                folder,
                BenchStation.remote(broker),
                "",
                BenchStation.serial(absent),
                BenchStation.serial(meter.path()),
                BenchStation.serial(file));
        try (RunningService service = RunningService.ready(station)) {
          List<String> expected =
              List.of(
                  "no3-a: serial port %s is absent. Plug the meter in, or look which ports there are with: restpoint ports"
                      .formatted(absent),
                  "no3-b: serial port %1$s is busy: another program holds it. Close the other program; which one it is tells: fuser -v %1$s"
                      .formatted(meter.path()),
                  "no3-c: %s is not a serial port. Look which ports there are with: restpoint ports"
                      .formatted(file),
                  "broker %s refused the connection: nothing listens there. Start the broker, or set broker: embedded."
                      .formatted(broker));
          expected.forEach(message -> service.message(message::equals));
          assertThat(service.messages()).doesNotHaveDuplicates();
          assertNoTrace(service.log());
          assertThat(service.terminate()).isZero();
        }
        assertThat(notices(station))
            .containsExactlyInAnyOrder("port-absent", "port-busy", "port-unusable");
      } finally {
        holder.destroy();
      }
    }
  }

  private List<String> notices(Path station) {
    return Ran.restpoint(folder, "records", station, "--of", "notices", "--as", "jsonl")
        .well()
        .json()
        .stream()
        .map(notice -> notice.get("code").asText())
        .toList();
  }

  /** As a user without rights, where the tests run as root, whom no port refuses. */
  @Test
  void aPortThatIsNotPermittedNamesTheGroupThatOwnsIt() throws IOException {
    mode(folder, "rwxrwxrwx");
    Path jar = Files.copy(Jar.file(), folder.resolve("restpoint.jar"));
    mode(jar, "rw-r--r--");
    try (PseudoTerminal meter = new PseudoTerminal()) {
      mode(meter.path(), "---rw----");
      String group =
          Files.readAttributes(meter.path(), PosixFileAttributes.class).group().getName();
      Path station =
          BenchStation.plain(
              folder,
              BenchStation.remote(Loopback.deadBroker()),
              "",
              BenchStation.serial(meter.path()));
      mode(station, "rw-r--r--");
      List<String> command = new ArrayList<>();
      if (Files.getOwner(folder).getName().equals("root")) {
        command.addAll(List.of("setpriv", "--reuid=65534", "--regid=65534", "--clear-groups"));
      }
      command.addAll(
          List.of(
              Jar.java(),
              "-Djava.io.tmpdir=" + folder,
              "-jar",
              jar.toString(),
              "run",
              station.toString()));
      try (RunningService service = RunningService.start(command)) {
        service.message(
            ("no3-a: serial port %s is not permitted to this user. Add the user to the group that"
                        + " owns it (here: %s)")
                    .formatted(meter.path(), group)
                ::equals);
        service.broker();
        assertNoTrace(service.log());
        assertThat(service.terminate()).isZero();
      }
    }
  }

  private static void mode(Path path, String permissions) throws IOException {
    Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(permissions));
  }

  @Test
  void aPasswordThatTheBrokerRefusesIsToldAndReadAnewUntilItIsRight() throws IOException {
    try (Mosquitto broker = Mosquitto.guarded(folder, "bench", "right").start()) {
      Path password = Files.writeString(folder.resolve("password"), "wrong\n");
      Path station =
          BenchStation.plain(
              folder,
              "{ url: \"%s\", user: bench, password-file: password }".formatted(broker.url()),
              "",
              "{ mqtt: { topic: bench/no3, payload: number } }");
      try (RunningService service = RunningService.ready(station)) {
        String refused =
            "broker %s does not accept the user bench with this password. Check the user and the first line of the password file, and what the broker allows this user."
                .formatted(broker.url());
        service.message(refused::equals);
        Files.writeString(password, "right\n");
        service.message("the broker is there"::equals);
        assertNoTrace(service.log());
        assertThat(service.log()).noneMatch(line -> line.contains("wrong"));
      }
    }
  }

  @Test
  void aSecondServiceOnTheSameJournalIsRefused() {
    Path station =
        BenchStation.plain(
            folder, "{ embedded: { port: 0 } }", "", BenchStation.serial(folder.resolve("x")));
    try (RunningService first = RunningService.ready(station);
        RunningService second = RunningService.start(station)) {
      assertSaid(
          second,
          4,
          "another running service (process %d) already writes the journal %s; stop it, or give this station a journal of its own"
              .formatted(first.pid(), folder.resolve("bench.db")));
    }
  }

  @Test
  void anHttpPortThatIsTakenIsNamed() throws IOException {
    try (ServerSocket other = Loopback.taken()) {
      Path station =
          BenchStation.plain(
              folder,
              BenchStation.remote(Loopback.deadBroker()),
              "http: 127.0.0.1:%d\n".formatted(other.getLocalPort()),
              BenchStation.serial(folder.resolve("x")));
      try (RunningService service = RunningService.start(station)) {
        assertSaid(
            service,
            4,
            "http 127.0.0.1:%d is taken: another program listens there. Set http in the station file to another port, to port 0 for a free one, or leave it out."
                .formatted(other.getLocalPort()));
      }
    }
  }

  @Test
  void aBrokerPortThatIsTakenIsNamed() throws IOException {
    try (ServerSocket other = Loopback.taken()) {
      Path station =
          BenchStation.plain(
              folder,
              "{ embedded: { port: %d } }".formatted(other.getLocalPort()),
              "",
              BenchStation.serial(folder.resolve("x")));
      try (RunningService service = RunningService.start(station)) {
        assertSaid(
            service,
            4,
            "the embedded broker cannot listen on 127.0.0.1:%d (Address already in use). Stop the program that holds the port, or give broker another port"
                .formatted(other.getLocalPort()));
      }
    }
  }

  @Test
  void aBrokerThatIsFrozenDoesNotHoldUpTheEnd() {
    try (Mosquitto broker = Mosquitto.open(folder).start()) {
      Path station =
          BenchStation.plain(
              folder,
              BenchStation.remote(broker.url()),
              "",
              "{ mqtt: { topic: bench/no3, payload: number } }");
      try (RunningService service = RunningService.ready(station);
          Rig rig = Rig.connect(broker.url(), "bench")) {
        rig.next(
            "no3-a", "state", state -> state.get("state").asText().equals("needs calibration"));
        broker.freeze();
        assertThat(service.terminate()).isZero();
      } finally {
        broker.thaw();
      }
    }
  }

  /** In the middle of its start, when the journal is open and nothing is ready. */
  @Test
  void whoEndsItWhileItStartsEndsItInOrder() {
    Path station =
        BenchStation.plain(
            folder,
            BenchStation.remote(Loopback.deadBroker()),
            "http: 127.0.0.1:0\n",
            BenchStation.serial(folder.resolve("x")));
    try (RunningService service = RunningService.start(station)) {
      service.http();
      assertThat(service.terminate()).isZero();
      assertNoTrace(service.log());
    }
  }

  @Test
  void theLogIsJsonWhereTheStationAsksForIt() {
    Path station =
        BenchStation.plain(
            folder,
            BenchStation.remote(Loopback.deadBroker()),
            "logs: json\n",
            BenchStation.serial(folder.resolve("x")));
    try (RunningService service = RunningService.start(station)) {
      JsonNode ready = Ran.parse(service.line(line -> line.contains("\"ready: ")));
      assertThat(ready.get("level").asText()).isEqualTo("INFO");
    }
  }
}
