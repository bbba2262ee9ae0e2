package org.restpoint.acquisition.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.restpoint.acquisition.command.Said.run;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.service.Service;
import org.restpoint.acquisition.service.Surroundings;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.mqtt.Subscriber;

/** A batch's list, given to a service that runs with its own broker. */
@Timeout(120)
class SamplesCommandTest {

  private static final String STATION =
      WillowBench.with("{ mqtt: { topic: bench/no3, payload: number } }");

  @TempDir private Path folder;
  private Path station = Path.of("");
  private Path list = Path.of("");

  @BeforeEach
  void write() throws IOException {
    station = Files.writeString(folder.resolve("station.yaml"), STATION);
    list =
        Files.writeString(
            folder.resolve("list.csv"),
            """
            number,grower,depthTopCentimetres,depthBottomCentimetres
            S-1,Ada,0,30
            S-2,Ada,,30
            """);
  }

  private Service service() {
    Service service =
        Service.start(
            StationArgument.read(station),
            new Surroundings(
                folder.resolve("native"),
                InstantSource.system(),
                System::nanoTime,
                1,
                event -> {}));
    awaitOnline();
    return service;
  }

  /** The service hears instructions once it says that it is there. */
  private void awaitOnline() {
    JournalSettings settings =
        new JournalSettings(StationArgument.read(station).journal(), folder.resolve("native"));
    try (JournalReader journal = new JournalReader(settings)) {
      journal.start();
      URI broker = URI.create(journal.fact(Service.BROKER_FACT).orElseThrow());
      try (Subscriber ear = Subscriber.connect(broker, "ear")) {
        ear.subscribe("restpoint/willow-bench/online", 1);
        ear.next(heard -> heard.payload().equals("true"));
      }
    }
  }

  @Test
  void everyRowIsKeptAndOnceMoreChangesNothing() {
    try (Service service = service()) {
      Said first = run("samples", station, "no3-a", list);
      assertThat(first.err())
          .isEqualTo("restpoint: 2 of the 2 samples of %s are kept\n".formatted(list));
      assertThat(first.exitStatus()).isZero();
      assertThat(first.out().lines()).hasSize(2).first().asString().contains("\"grower\":\"Ada\"");
      assertThat(run("samples", station, "no3-a", list)).isEqualTo(first);

      Said told =
          run(
              "tell",
              station,
              "no3-a",
              "sample",
              "number=S-1",
              "grower=Bea",
              "cooled=no",
              "--wait");
      assertThat(told.err()).isEmpty();
      assertThat(told.out().lines()).hasSize(2).last().asString().contains("\"revision\":2");
      Said table = run("tell", station, "no3-a", "sample", "number=S-2", "depthTopCentimetres=31");
      assertThat(table.exitStatus()).isEqualTo(5);
      assertThat(table.err())
          .isEqualTo(
              "restpoint: sample was refused: the record of sample S-2 cannot be so:"
                  + " depthBottomCentimetres: expected no less than depthTopCentimetres, 31; found"
                  + " 30. Mend it and send it again; what was kept before stays.\n");
      assertThat(service.link("no3-a")).isPresent();
    }
  }

  @Test
  void aRowThatTheServiceRefusesIsToldByItsLineAndTheOthersAreKept() throws IOException {
    try (Service service = service()) {
      assertThat(service.link("no3-a")).isPresent();
      run("samples", station, "no3-a", list);
      Files.writeString(list, "number,depthTopCentimetres\nS-1,31\nS-3,31\n");
      Said said = run("samples", station, "no3-a", list);
      assertThat(said.exitStatus()).isEqualTo(5);
      assertThat(said.err())
          .startsWith("restpoint: line 2 was refused: the record of sample S-1 cannot be so: ")
          .endsWith("restpoint: 1 of the 2 samples of %s are kept\n".formatted(list));
      assertThat(said.out().lines()).hasSize(1);
    }
  }

  @Test
  void nothingIsSentWhereARowIsWrong() throws IOException {
    Files.writeString(list, "number,kind\nS-1,soil\nS-2,mud\n,soil\n");
    run("samples", station, "no3-a", list)
        .isRefusal(
            4,
            "%s is refused and nothing of it is sent, 2 problems:\n".formatted(list)
                + "  line 3: kind: expected one of soil, tile water, well water, surface water,"
                + " other; found \"mud\"\n"
                + "  line 4: number is missing: expected the number of the sample");
  }

  @Test
  void aStationThatHasNeverRunIsTold() {
    run("samples", station, "no3-a", list)
        .isRefusal(
            4,
            "station willow-bench has not been run yet; start it with: restpoint run " + station);
  }
}
