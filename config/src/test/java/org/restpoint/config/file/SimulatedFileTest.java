package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.Quantity;
import org.restpoint.config.station.SimulatedFault;
import org.restpoint.config.station.Simulation;
import org.restpoint.config.station.Simulation.Resolution;
import org.restpoint.config.station.Simulation.Response;
import org.restpoint.config.station.Simulation.Temperature;
import org.restpoint.config.station.Simulation.Visit;
import org.restpoint.config.station.Station;

/** What a station file says of simulated probes. */
class SimulatedFileTest {

  @TempDir Path folder;
  private Station station;

  @BeforeEach
  void read() {
    station = new Fixture(folder).understood(Fixture.example("simulated.yaml"));
  }

  private LinkSettings.Simulated link(String probe) {
    return (LinkSettings.Simulated)
        Objects.requireNonNull(station.probes().get(probe), probe).link();
  }

  private Simulation.Electrode electrode(String probe) {
    return (Simulation.Electrode) link(probe).simulation();
  }

  @Test
  void everyKeyOfAnElectrodeIsUnderstood() {
    assertThat(electrode("brook"))
        .isEqualTo(
            new Simulation.Electrode(
                List.of(
                    new Visit(
                        new Quantity(5, "mg/L"),
                        Optional.of(20.0),
                        Optional.of(Duration.ofMinutes(10))),
                    new Visit(
                        new Quantity(1, "mmol/L"),
                        Optional.empty(),
                        Optional.of(Duration.ofHours(2)))),
                new Temperature(12, 3, Duration.ofDays(1)),
                96,
                15,
                new Response.TwoExponentials(Duration.ofSeconds(4), Duration.ofMinutes(1), 20),
                new Simulation.Noise(0.02, 0.1, 0.9),
                1,
                5,
                new Resolution(0.1, 0.5)));
    assertThat(link("brook").interval()).isEqualTo(Duration.ofSeconds(2));
    assertThat(link("brook").noDataAfter()).isEqualTo(Duration.ofMinutes(1));
  }

  @Test
  void everyFaultIsUnderstood() {
    assertThat(link("brook").faults())
        .extracting(SimulatedFault::kind)
        .containsExactly(
            new SimulatedFault.Silent(),
            new SimulatedFault.Unplugged(),
            new SimulatedFault.Flood(50),
            new SimulatedFault.OpenCircuit(1200, 100),
            new SimulatedFault.Spikes(30, 2),
            new SimulatedFault.NoiseBurst(3),
            new SimulatedFault.AirBubble(-40, 20),
            new SimulatedFault.CoatedMembrane(5),
            new SimulatedFault.OffsetJump(-8));
    assertThat(link("brook").faults())
        .startsWith(
            new SimulatedFault(
                new SimulatedFault.Silent(),
                Duration.ofMinutes(10),
                Optional.of(Duration.ofMinutes(2)),
                Optional.of(Duration.ofHours(1))))
        .endsWith(
            new SimulatedFault(
                new SimulatedFault.OffsetJump(-8),
                Duration.ofMinutes(90),
                Optional.empty(),
                Optional.empty()));
  }

  @Test
  void aThermometerHasATemperatureAlone() {
    assertThat(link("brook-temp"))
        .isEqualTo(
            new LinkSettings.Simulated(
                new Simulation.Thermometer(
                    new Temperature(12, 3, Duration.ofDays(1)), new Resolution(0.01, 0.1)),
                Duration.ofSeconds(10),
                Duration.ofMinutes(5),
                List.of(
                    new SimulatedFault(
                        new SimulatedFault.Silent(),
                        Duration.ofHours(1),
                        Optional.empty(),
                        Optional.empty()))));
  }

  @Test
  void whatIsLeftOutDependsOnWhatIsThere() {
    assertThat(electrode("ph").response()).isEqualTo(new Response.Membrane(Duration.ofMillis(10)));
    assertThat(electrode("ph").visits())
        .extracting(Visit::solution)
        .containsExactly(new Quantity(7, Quantity.PH), new Quantity(4, Quantity.PH));
    assertThat(electrode("plain").response())
        .isEqualTo(new Response.Hyperbola(Duration.ofSeconds(3)));
    assertThat(link("plain").noDataAfter()).as("three intervals").isEqualTo(Duration.ofMinutes(3));
  }
}
