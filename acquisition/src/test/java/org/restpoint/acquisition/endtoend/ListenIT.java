package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.serial.PseudoTerminal;

/** The first day with an unknown meter that waits to be asked, by the runnable file alone. */
@EnabledOnOs(OS.LINUX)
@Timeout(300)
class ListenIT {

  private static final int A_WHILE_MILLIS = 100;

  @TempDir private Path folder;
  private final AtomicBoolean over = new AtomicBoolean();
  private final AtomicInteger asked = new AtomicInteger();

  /** Whoever has the port open keeps it so: a meter that nobody hears would lose its terminal. */
  private void answer(PseudoTerminal meter) {
    while (!over.get()) {
      if (meter.receive(A_WHILE_MILLIS).contains("READ\r")) {
        meter.send("ch1 187.4%d mV 22.5 C ok\r\n".formatted(asked.getAndIncrement() % 3));
      }
    }
  }

  @Test
  void whatIsPrintedForTheFileReadsTheMeter() throws Exception {
    Path station =
        Files.writeString(
            folder.resolve("first-day.yaml"),
            """
            station: first-day
            broker: { embedded: { port: 0 } }
            standards:
              low: { concentration: 5 mg/L, basis: as-N }
              high: { concentration: 100 mg/L, basis: as-N }
            """);
    try (PseudoTerminal meter = new PseudoTerminal();
        var held = Files.newByteChannel(meter.path(), StandardOpenOption.READ)) {
      Ran silent = Ran.restpoint(folder, "listen", meter.path(), "--for", "1s");
      assertThat(silent.exitStatus()).isEqualTo(5);
      assertThat(silent.out()).isEmpty();
      assertThat(silent.err()).contains("nothing came").contains("--ask 'READ\\r\\n'");
      assertThat(meter.receive(0)).as("nothing is sent unless a person says so").isEmpty();

      assertThat(held.isOpen()).isTrue();
      Thread answering = new Thread(() -> answer(meter), "polled-meter");
      answering.start();
      Ran listened =
          Ran.restpoint(folder, "listen", meter.path(), "--ask", "READ\\r", "--every", "150ms")
              .well();
      assertThat(listened.err()).contains("| 187.4").contains("lines are read by");
      assertThat(listened.out())
          .contains("line: 'ch1 (?<millivolts>[-+.\\d]+) mV (?<celsius>[-+.\\d]+) C ok'")
          .contains("poll: \"READ\\r\"", "every: 150 ms");

      Files.writeString(station, listened.out(), StandardOpenOption.APPEND);
      assertThat(Ran.restpoint(folder, "check", station).exitStatus())
          .as("a person has not said yet which ion it is")
          .isEqualTo(3);
      Files.writeString(
          station,
          Files.readString(station)
              .replaceAll("(?m)^    # (?=analyte:|basis:|calibrate:)", "    "));
      Ran.restpoint(folder, "check", station).well();
      int before = asked.get();
      try (RunningService service = RunningService.ready(station)) {
        Eventually.become("it is asked and answers", () -> asked.get() >= before + 5);
        assertThat(service.terminate()).isZero();
      }
      over.set(true);
      answering.join();
      assertThat(
              Ran.restpoint(folder, "records", station, "--of", "readings", "--as", "csv")
                  .well()
                  .out())
          .containsPattern("probe-1,187\\.4[012],22\\.5");
    } finally {
      over.set(true);
    }
  }
}
