package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.config.station.Moves;
import org.restpoint.config.station.Probe;
import org.restpoint.config.station.Station;

class MovesTest {

  @TempDir Path folder;

  private static Moves moves(Station station, String name) {
    return Optional.ofNullable(station.probes().get(name))
        .flatMap(Probe::electrode)
        .orElseThrow()
        .moves();
  }

  @Test
  void movesAreToldUnlessTheyAreSeen() {
    Fixture fixture = new Fixture(folder);
    Station station = fixture.understood(Fixture.example("sampler.yaml"));
    assertThat(moves(station, "told")).isEqualTo(new Moves.Told());
    assertThat(moves(station, "usual"))
        .isEqualTo(
            new Moves.ByItself(
                OptionalDouble.empty(),
                OptionalDouble.of(20),
                3,
                10,
                Duration.ofSeconds(5),
                Duration.ofMinutes(3)));
    assertThat(moves(station, "seen"))
        .isEqualTo(
            new Moves.ByItself(
                OptionalDouble.of(6),
                OptionalDouble.of(25),
                4,
                8,
                Duration.ofSeconds(7),
                Duration.ofMinutes(2)));
    assertThat(moves(fixture.understood(Fixture.example("bench.yaml")), "no3-a"))
        .isEqualTo(new Moves.Told());
  }
}
