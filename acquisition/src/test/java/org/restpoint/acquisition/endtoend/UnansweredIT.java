package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.broker.Mosquitto;

/** Instructions that nobody hears: the very words at the terminal and the exit status. */
@Timeout(300)
class UnansweredIT {

  @TempDir private Path folder;

  private void assertTold(Path station, String err) {
    Ran told = Ran.restpoint(folder, "tell", station, "no3-a", "measure");
    assertThat(told).isEqualTo(new Ran(4, "", "restpoint: " + err + "\n"));
  }

  @Test
  void anInstructionToAServiceThatDoesNotRun() {
    try (Mosquitto broker = Mosquitto.open(folder).start()) {
      Path station =
          BenchStation.plain(
              folder,
              BenchStation.remote(broker.url()),
              "",
              BenchStation.serial(folder.resolve("x")));
      assertTold(
          station,
          "station bench did not answer within 10 s; look whether it is running: restpoint run "
              + station);
    }
  }

  @Test
  void anInstructionThroughABrokerThatIsNotThere() {
    URI broker = Loopback.deadBroker();
    assertTold(
        BenchStation.plain(
            folder, BenchStation.remote(broker), "", BenchStation.serial(folder.resolve("x"))),
        "broker %s refused the connection: nothing listens there. Start the broker, or set broker: embedded."
            .formatted(broker));
  }

  @Test
  void anInstructionToAServiceThatTookItsBrokerWithIt() {
    Path station =
        BenchStation.plain(
            folder, "{ embedded: { port: 0 } }", "", BenchStation.serial(folder.resolve("x")));
    URI broker;
    try (RunningService service = RunningService.ready(station)) {
      broker = service.broker();
      assertThat(service.terminate()).isZero();
    }
    assertTold(
        station,
        "station bench is not running: nobody answers at %s, where its broker was last; start it with: restpoint run %s"
            .formatted(broker, station));
  }
}
