package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.serial.PseudoTerminal;

/** A meter that speaks only when it is asked, and a service that brings its own broker. */
@EnabledOnOs(OS.LINUX)
@Timeout(300)
class PolledMeterIT {

  private static final int A_WHILE_MILLIS = 100;

  @TempDir private Path folder;
  private final AtomicInteger answered = new AtomicInteger();
  private final AtomicBoolean over = new AtomicBoolean();

  private void answer(PseudoTerminal meter, ScriptedElectrode electrode) {
    while (!over.get()) {
      long asked = meter.receive(A_WHILE_MILLIS).chars().filter(sent -> sent == '\r').count();
      for (long i = 0; i < asked; i++) {
        answered.incrementAndGet();
        meter.send(electrode.line());
      }
    }
  }

  @Test
  void isReadOnceForEachAsk() throws InterruptedException {
    try (PseudoTerminal meter = new PseudoTerminal();
        ScriptedElectrode electrode = new ScriptedElectrode(BenchStation.LOW, 20.0)) {
      Path station =
          BenchStation.write(
              folder,
              """
              station: willow-bench
              broker: { embedded: { port: 0 } }
              standards:
                low: { concentration: 5 mg/L, basis: as-N }
              probes:
                no3-a:
                  analyte: nitrate
                  basis: as-N
                  link: { serial: { port: %s, poll: "R\\r", every: 50 ms, line: '%s' } }
                  temperature: { from: reading }
                  calibrate: { standards: [low] }
              """
                  .formatted(meter.path(), BenchStation.line()));
      Thread answering = new Thread(() -> answer(meter, electrode), "polled-meter");
      answering.start();
      try (RunningService service = RunningService.ready(station)) {
        JsonNode calibration =
            Ran.restpoint(folder, "tell", station, "no3-a", "calibrate", "standard=low", "--wait")
                .well()
                .json()
                .get(1)
                .get("outcome");
        assertThat(calibration.get("verdict").asText()).isEqualTo("accepted");
        assertThat(calibration.get("slopeFrom").asText()).isEqualTo("ideal");
        assertThat(calibration.at("/points/0/celsius").asDouble()).isEqualTo(20);
        over.set(true);
        answering.join();
        assertThat(service.terminate()).isZero();
      } finally {
        over.set(true);
      }
      long kept =
          Ran.restpoint(folder, "records", station, "--of", "readings", "--as", "jsonl")
              .well()
              .json()
              .size();
      assertThat(kept)
          .as("one reading for an answer, but for what was on its way at the beginning and the end")
          .isBetween(answered.get() - 2L, (long) answered.get())
          .isGreaterThanOrEqualTo(10);
    }
  }
}
