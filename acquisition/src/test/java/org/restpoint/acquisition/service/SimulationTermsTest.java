package org.restpoint.acquisition.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.simulated.Beaker;
import org.restpoint.adapters.simulated.Display;
import org.restpoint.adapters.simulated.ElectrodeTraits;
import org.restpoint.adapters.simulated.Fault;
import org.restpoint.adapters.simulated.Noise;
import org.restpoint.adapters.simulated.ResponseModel;
import org.restpoint.adapters.simulated.ScheduledFault;
import org.restpoint.adapters.simulated.SimulatedSettings;
import org.restpoint.adapters.simulated.Subject;
import org.restpoint.adapters.simulated.Swing;
import org.restpoint.adapters.simulated.Visit;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.Probe;

/** What a station file says of simulated probes reaches their links. */
class SimulationTermsTest {

  @TempDir private Path folder;

  private SimulatedSettings settings(String probe) {
    Probe read =
        Objects.requireNonNull(
            Stations.read(
                    folder,
                    """
                    station: made-up
                    broker: embedded
                    standards:
                      salt: { concentration: 1 mmol/L }
                      b7: { buffer: phosphate }
                    probes:
                      chloride:
                        analyte: chloride
                        link:
                          simulated:
                            visits:
                              - { solution: 1 mmol/L, for: 10 min, temperature: 20 Cel }
                              - { solution: 2 mmol/L }
                            temperature: { mean: 12 Cel, amplitude: 3 K, period: 2 h }
                            slope: 96 %
                            offset: 15 mV
                            response: two-exponentials
                            time-constant: 4 s
                            slow-time-constant: 1 min
                            slow-share: 20 %
                            noise: 0.02 mV
                            correlated-noise: 0.1 mV
                            correlation: 0.9
                            creep: 1 mV/h
                            resolution: 0.1 mV
                            temperature-resolution: 0.5 K
                            interval: 2 s
                            no-data-after: 1 min
                            seed: 5
                            faults:
                              - { fault: silent, at: 1 min, for: 2 s, every: 3 s }
                              - { fault: unplugged, at: 1 min, for: 2 s }
                              - { fault: flood, at: 1 min, for: 2 s, times: 50 }
                              - { fault: open-circuit, at: 1 min, for: 2 s, potential: 1.2 V, wander: 9 mV }
                              - { fault: spikes, at: 1 min, for: 2 s, size: 30 mV, share: 2 % }
                              - { fault: noise-burst, at: 1 min, for: 2 s, noise: 3 mV }
                              - { fault: air-bubble, at: 1 min, for: 2 s, jump: -40 mV, slower: 20 }
                              - { fault: coated-membrane, at: 1 min, for: 2 s, slower: 5 }
                              - { fault: offset-jump, at: 1 min, jump: -8 mV }
                        temperature: { from: reading }
                        calibrate: { standards: [salt] }
                      ph:
                        analyte: hydrogen
                        link: { simulated: { solution: 6.50 pH, response: hyperbola } }
                        temperature: { from: reading }
                        calibrate: { standards: [b7] }
                      membrane:
                        analyte: chloride
                        link: { simulated: { solution: 1 mmol/L, response: membrane } }
                        temperature: { from: reading }
                        calibrate: { standards: [salt] }
                      warmth:
                        measures: temperature
                        link: { simulated: { temperature: 7 Cel, temperature-resolution: 0.2 K } }
                    """)
                .probes()
                .get(probe));
    return SimulationTerms.settings((LinkSettings.Simulated) read.link(), read, 3);
  }

  @Test
  void everythingOfAnElectrode() {
    assertThat(settings("chloride"))
        .isEqualTo(
            new SimulatedSettings(
                new Subject.Electrode(
                    new ElectrodeTraits(
                        96,
                        15,
                        -1,
                        new ResponseModel.TwoExponentials(
                            Duration.ofSeconds(4), Duration.ofMinutes(1), 0.2),
                        new Noise(0.02, 0.1, 0.9),
                        1,
                        5,
                        new Display(0.1, 0.5)),
                    List.of(
                        Visit.of(new Beaker(0.001, 20), Duration.ofMinutes(10)),
                        Visit.forGood(new Beaker(0.002, 12))),
                    new Swing(3, Duration.ofHours(2))),
                Duration.ofSeconds(2),
                Duration.ofMinutes(1),
                List.of(
                    new ScheduledFault(
                        new Fault.Silent(),
                        Duration.ofMinutes(1),
                        Optional.of(Duration.ofSeconds(2)),
                        Optional.of(Duration.ofSeconds(3))),
                    fault(new Fault.Unplugged()),
                    fault(new Fault.Flood(50)),
                    fault(new Fault.OpenCircuit(1200, 9)),
                    fault(new Fault.Spikes(30, 0.02)),
                    fault(new Fault.NoiseBurst(3)),
                    fault(new Fault.AirBubble(-40, 20)),
                    fault(new Fault.CoatedMembrane(5)),
                    new ScheduledFault(
                        new Fault.OffsetJump(-8),
                        Duration.ofMinutes(1),
                        Optional.empty(),
                        Optional.empty())),
                3));
  }

  private static ScheduledFault fault(Fault fault) {
    return ScheduledFault.once(fault, Duration.ofMinutes(1), Duration.ofSeconds(2));
  }

  @Test
  void aPhIsAnActivityOfHydrogenIons() {
    Subject.Electrode ph = (Subject.Electrode) settings("ph").subject();
    assertThat(Math.log10(ph.visits().get(0).beaker().molesPerLitre()))
        .isCloseTo(-6.5, within(1e-12));
    assertThat(ph.traits().charge()).isEqualTo(1);
    assertThat(ph.traits().response())
        .isEqualTo(new ResponseModel.Hyperbola(Duration.ofSeconds(3)));
    Subject.Electrode membrane = (Subject.Electrode) settings("membrane").subject();
    assertThat(membrane.traits().response())
        .isEqualTo(new ResponseModel.MembraneDiffusion(Duration.ofMillis(10)));
  }

  @Test
  void aThermometerAlone() {
    assertThat(settings("warmth"))
        .isEqualTo(
            new SimulatedSettings(
                new Subject.Thermometer(
                    7, new Swing(0, Duration.ofDays(1)), new Display(0.01, 0.2)),
                Duration.ofSeconds(1),
                Duration.ofSeconds(30),
                List.of(),
                3));
  }
}
