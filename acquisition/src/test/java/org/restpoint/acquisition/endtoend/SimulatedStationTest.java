package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.service.Service;
import org.restpoint.acquisition.service.Surroundings;
import org.restpoint.acquisition.station.StationTerms;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.simulated.SimulatedLink;
import org.restpoint.config.file.StationFile;
import org.restpoint.config.file.StationFile.Outcome;
import org.restpoint.config.station.Station;

/**
 * The example of simulated probes, run by the real service, six hundred times faster than a clock.
 * Time at the probes goes on only up to where the test lets it, so that nothing is missed.
 */
@Timeout(180)
class SimulatedStationTest {

  private static final Path EXAMPLE = Path.of("..", "adapters", "examples", "simulated.yaml");
  private static final Instant START = Instant.parse("2026-04-02T14:00:00Z");
  private static final double SPEED = 600;

  @TempDir private Path folder;
  private final HeldTime time = new HeldTime();
  private volatile List<SimulatedLink> links = List.of();
  private Service service;
  private Rig rig;

  /** Nanoseconds that pass as they do everywhere, but not beyond a limit. */
  private static final class HeldTime {

    private long base;
    private long since = System.nanoTime();
    private long limit;

    synchronized long nanos() {
      return Math.min(base + System.nanoTime() - since, limit);
    }

    synchronized void runUntil(Duration simulated) {
      base = nanos();
      since = System.nanoTime();
      limit = Math.round(simulated.toNanos() / SPEED);
    }
  }

  @BeforeEach
  void start() throws IOException {
    Station station = station();
    service =
        Service.start(
            station,
            new Surroundings(folder, this::simulatedTime, time::nanos, SPEED, event -> {}));
    links =
        station.probes().keySet().stream()
            .map(probe -> (SimulatedLink) service.link(probe).orElseThrow())
            .toList();
    rig = Rig.connect(broker(station), station.name()).awaitOnline(true);
  }

  private Station station() throws IOException {
    String anyPort =
        Files.readString(EXAMPLE)
            .replace("\nbroker: embedded ", "\nbroker: { embedded: { port: 0 } } ");
    Path file = Files.writeString(folder.resolve("simulated.yaml"), anyPort);
    return ((Outcome.Understood) StationFile.read(file, StationTerms.vocabulary())).station();
  }

  private URI broker(Station station) {
    try (JournalReader journal =
        new JournalReader(new JournalSettings(station.journal(), folder))) {
      journal.start();
      return URI.create(journal.fact(Service.BROKER_FACT).orElseThrow());
    }
  }

  /** No reading is later than this, and no deadline passes while readings are on their way. */
  private Instant simulatedTime() {
    return links.stream()
        .map(SimulatedLink::simulatedTime)
        .min(Comparator.naturalOrder())
        .orElse(START);
  }

  @AfterEach
  void end() {
    rig.close();
    service.close();
  }

  private static Duration minutes(int minutes) {
    return Duration.ofMinutes(minutes);
  }

  private void reach(Duration simulated) throws InterruptedException {
    time.runUntil(simulated);
    Instant reached = START.plus(simulated);
    Eventually.become(reached, () -> !simulatedTime().isBefore(reached));
  }

  private void calibrate(String standard, Duration until) {
    rig.tell(
        "brook",
        "{\"id\":\"%1$s\",\"do\":\"calibrate\",\"standard\":\"%1$s\"}".formatted(standard));
    rig.answer("brook", standard, "accepted");
    time.runUntil(until);
    assertThat(rig.answer("brook", standard, "done").at("/outcome/verdict").asText())
        .isEqualTo("accepted");
  }

  private JsonNode notice(String code) {
    return rig.next("brook", "notice", notice -> notice.get("code").asText().equals(code));
  }

  @Test
  void aStationIsCalibratedAndReadAndItsFaultsAreToldWithNobodyThere() throws Exception {
    reach(minutes(1));
    assertThat(rig.next("brook-temp", "raw", any -> true).get("celsius").asDouble())
        .isBetween(14.0, 14.1);
    calibrate("low", minutes(9));
    reach(minutes(11));
    calibrate("high", minutes(19));
    reach(minutes(22));
    rig.tell("brook", "{\"id\":\"back\",\"do\":\"rinsed\"}");
    rig.answer("brook", "back", "done");
    time.runUntil(minutes(60));

    JsonNode result = rig.next("brook", "result", r -> r.get("outcome").asText().equals("settled"));
    assertThat(Instant.parse(result.get("time").asText()))
        .isBetween(START.plus(minutes(30)), START.plus(minutes(40)));
    assertThat(result.at("/concentration/value").asDouble())
        .as("noise of 0.07 mV and a creep of as much")
        .isCloseTo(6, within(0.1));
    assertThat(result.at("/concentration/basis").asText()).isEqualTo("as-N");

    assertThat(notice("no-data").get("text").asText())
        .startsWith("the simulated electrode has sent nothing for 60 s");
    notice("data-back");
    assertThat(notice("simulated-lost").get("remedy").asText()).contains("plugged in again");
    notice("simulated-back");

    reach(minutes(60));
    // A reading a second but for five minutes of silence and three without a plug.
    received("brook", 3601 - 300 - 180);
    // One in ten seconds, and nineteen more each of six times in a flood.
    received("brook-temp", 361 + 6 * 19);
  }

  private void received(String probe, long readings) throws InterruptedException {
    Eventually.become(
        readings + " readings of " + probe,
        () -> service.link(probe).orElseThrow().counts().received() == readings);
  }
}
