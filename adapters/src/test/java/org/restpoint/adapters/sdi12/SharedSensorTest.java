package org.restpoint.adapters.sdi12;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.restpoint.adapters.bus.Outcome;

/** Several probes of one sensor, and others beside it, over a wire in memory. */
class SharedSensorTest {

  private static final Duration SECOND = Duration.ofSeconds(1);

  private final MemoryTurn turn = new MemoryTurn();
  private final SimulatedSensor zero = turn.sensor('0', 187.4, 21.5, -12);
  private final Probes probes = new Probes();

  @Test
  void othersAreAskedWhileAConcurrentMeasurementRuns() {
    turn.sensor('1', 5, 6);
    zero.takes(30, Optional.empty());
    SensorExchange slow = probes.probe('0', "C", 1, 2);
    assertThat(slow.poll(turn)).isEqualTo(new Outcome.Later(Duration.ofSeconds(30), slow));
    assertThat(probes.probe('1', "M", 1, 2).poll(turn)).isEqualTo(Probes.read(5, 6));
    turn.passes(Duration.ofSeconds(30));
    assertThat(slow.poll(turn)).isEqualTo(Probes.read(187.4, 21.5));
    assertThat(turn.bus().commands()).containsExactly("0C!", "1M!", "1D0!", "0D0!");
  }

  @Test
  void probesOfOneMeasurementShareItAndHaveItOnce() {
    zero.takes(5, Optional.empty());
    SensorExchange nitrate = probes.probe('0', "C", 1, 2);
    SensorExchange chloride = probes.probe('0', "C", 3, 2);
    assertThat(nitrate.poll(turn)).isEqualTo(new Outcome.Later(Duration.ofSeconds(5), nitrate));
    turn.passes(SECOND);
    assertThat(chloride.poll(turn)).isEqualTo(new Outcome.Later(Duration.ofSeconds(4), chloride));
    turn.passes(Duration.ofSeconds(4));
    assertThat(chloride.poll(turn)).isEqualTo(Probes.read(-12, 21.5));
    assertThat(nitrate.poll(turn)).isEqualTo(Probes.read(187.4, 21.5));
    assertThat(zero.measurements()).isEqualTo(1);
    zero.takes(0, Optional.empty());
    assertThat(nitrate.poll(turn)).isEqualTo(Probes.read(187.4, 21.5));
    assertThat(zero.measurements()).isEqualTo(2);
    turn.passes(Sensor.FRESH.plusNanos(1));
    assertThat(chloride.poll(turn)).isEqualTo(Probes.read(-12, 21.5));
    assertThat(zero.measurements()).isEqualTo(3);
  }

  @Test
  void aRunningMeasurementIsNotAbortedByAnotherProbeOfTheSensor() {
    zero.takes(5, Optional.empty());
    SensorExchange running = probes.probe('0', "C", 1, 2);
    SensorExchange other = probes.probe('0', "R0", 3, 2);
    running.poll(turn);
    assertThat(other.poll(turn)).isEqualTo(new Outcome.Later(Duration.ofSeconds(5), other));
    turn.passes(Duration.ofSeconds(5));
    assertThat(other.poll(turn)).isEqualTo(Probes.read(-12, 21.5));
    assertThat(running.poll(turn)).isEqualTo(Probes.read(187.4, 21.5));
    assertThat(turn.bus().commands()).containsExactly("0C!", "0D0!", "0R0!");
  }

  @Test
  void aMeasurementThatRanOverAnotherWireIsForgotten() {
    zero.takes(5, Optional.empty());
    SensorExchange probe = probes.probe('0', "C", 1, 2);
    probe.poll(turn);
    MemoryTurn replugged = new MemoryTurn();
    replugged.sensor('0', 7, 8);
    assertThat(probe.poll(replugged)).isEqualTo(Probes.read(7, 8));
    assertThat(replugged.bus().commands()).containsExactly("0C!", "0D0!");
  }

  @Test
  void whatASharedMeasurementFailsByIsToldToAll() {
    zero.silent(true);
    assertThat(probes.probe('0', "M", 1, 2).poll(turn)).isEqualTo(new Outcome.NoAnswer());
    assertThat(probes.probe('0', "M", 3, 0).poll(turn)).isEqualTo(new Outcome.NoAnswer());
    assertThat(turn.bus().commands()).containsExactly("0M!", "0M!", "0M!");
  }

  @Test
  void aLostWireIsToldAtOnceAndNotRememberedForOthers() {
    turn.goes();
    assertThat(probes.probe('0', "M", 1, 2).poll(turn)).isEqualTo(new Outcome.WireGone());
    MemoryTurn replugged = new MemoryTurn();
    replugged.sensor('0', 7, 8);
    assertThat(probes.probe('0', "M", 1, 2).poll(replugged)).isEqualTo(Probes.read(7, 8));
  }

  @Test
  void aSensorThatIsOffHoldsUpTheOthersForOneAnswerUntilItIsBack() {
    SensorExchange probe = probes.probe('0', "M", 1, 2);
    zero.silent(true);
    probe.poll(turn);
    probe.poll(turn);
    assertThat(turn.bus().commands()).containsExactly("0M!", "0M!", "0M!", "0M!");
    zero.silent(false);
    assertThat(probe.poll(turn)).isEqualTo(Probes.read(187.4, 21.5));
    zero.silent(true);
    probe.poll(turn);
    assertThat(turn.bus().commands()).endsWith("0D0!", "0M!", "0M!", "0M!");
  }
}
