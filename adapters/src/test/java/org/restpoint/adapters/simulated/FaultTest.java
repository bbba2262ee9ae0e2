package org.restpoint.adapters.simulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What faults make of an electrode at rest at 318.32 mV, and when they are there. */
class FaultTest {

  private static final Instant T = Instant.parse("2026-04-02T14:03:00Z");
  private static final Beaker STRONG = new Beaker(1e-2, 25.0);
  private static final Beaker WEAK = new Beaker(1e-4, 25.0);
  private static final double AT_REST = 318.32;

  private final SimulatedElectrode electrode = electrode(0);

  private static SimulatedElectrode electrode(double noiseMillivolts) {
    return new SimulatedElectrode(
        ElectrodeTraits.of(100, 200, -1, Duration.ofSeconds(8), noiseMillivolts, 3),
        STRONG,
        Swing.NONE,
        T);
  }

  private double[] readings(int count, Fault.OfElectrode... faults) {
    return IntStream.range(0, count)
        .mapToDouble(
            i -> electrode.reading(T.plusSeconds(i), List.of(faults)).millivolts().getAsDouble())
        .toArray();
  }

  @Test
  void anOpenCircuitWandersFarOff() {
    double[] open = readings(2000, new Fault.OpenCircuit(1000, 200));
    double mean = IntStream.range(0, 2000).mapToDouble(i -> open[i]).average().getAsDouble();
    double step =
        IntStream.range(1, 2000)
            .mapToDouble(i -> Math.abs(open[i] - open[i - 1]))
            .average()
            .getAsDouble();
    assertThat(mean).as("twenty independent values of 200").isCloseTo(1000, within(230.0));
    assertThat(step).as("neighbours differ by tens of mV").isBetween(20.0, 80.0);
  }

  @Test
  void spikesAreSingleReadingsOfTheirSizeEitherWay() {
    double[] spiky = readings(10_000, new Fault.Spikes(50, 0.1));
    long up = IntStream.range(0, 10_000).filter(i -> spiky[i] == AT_REST + 50).count();
    long down = IntStream.range(0, 10_000).filter(i -> spiky[i] == AT_REST - 50).count();
    long none = IntStream.range(0, 10_000).filter(i -> spiky[i] == AT_REST).count();
    assertThat(up + down + none).isEqualTo(10_000);
    assertThat(up).as("500, five standard deviations of 22").isBetween(390L, 610L);
    assertThat(down).isBetween(390L, 610L);
  }

  @Test
  void aBurstOfNoiseIsOfItsSize() {
    double[] noisy = readings(10_000, new Fault.NoiseBurst(5));
    double squares =
        IntStream.range(0, 10_000)
            .mapToDouble(i -> Math.pow(noisy[i] - AT_REST, 2))
            .average()
            .getAsDouble();
    assertThat(Math.sqrt(squares)).isCloseTo(5, within(0.18));
  }

  @Test
  void anAirBubbleJumpsAndKeepsTheSolutionOff() {
    Fault.AirBubble bubble = new Fault.AirBubble(-25, 10);
    assertThat(readings(2, bubble)).containsExactly(AT_REST - 25, AT_REST - 25);
    electrode.immerse(T.plusSeconds(1), WEAK);
    double slowly =
        electrode.reading(T.plusSeconds(81), List.of(bubble)).millivolts().getAsDouble();
    SimulatedElectrode free = electrode(0);
    free.immerse(T.plusSeconds(1), WEAK);
    assertThat(slowly + 25)
        .as("80 s are as 8 s without it")
        .isCloseTo(free.reading(T.plusSeconds(9)).millivolts().getAsDouble(), within(0.011));
  }

  @Test
  void aCoatedMembraneGoesOnFromWhereItWasWhenItIsCleanAgain() {
    Fault.CoatedMembrane coat = new Fault.CoatedMembrane(4);
    electrode.reading(T, List.of(coat));
    electrode.immerse(T, WEAK);
    electrode.reading(T.plusSeconds(40), List.of());
    SimulatedElectrode clean = electrode(0);
    clean.immerse(T, WEAK);
    assertThat(electrode.reading(T.plusSeconds(45)).millivolts())
        .as("40 s that counted 10, and 5 more")
        .isEqualTo(clean.reading(T.plusSeconds(15)).millivolts());
  }

  @Test
  void aFaultThatIsOverHasChangedNothingOfTheNoise() {
    SimulatedElectrode disturbed = electrode(0.5);
    SimulatedElectrode whole = electrode(0.5);
    for (int i = 0; i < 200; i++) {
      Instant time = T.plusSeconds(i);
      boolean bad = i >= 50 && i < 100;
      if (bad) {
        disturbed.reading(
            time,
            List.of(new Fault.NoiseBurst(3), new Fault.OffsetJump(10), new Fault.Spikes(9, 1)));
        disturbed.extraReading(time.plusMillis(500), List.of());
        whole.reading(time);
      } else {
        assertThat(disturbed.reading(time)).isEqualTo(whole.reading(time));
      }
    }
  }

  @Test
  void theSameSeedGivesTheSameFaultsToTheLastBit() {
    List<Fault.OfElectrode> faults =
        List.of(new Fault.OpenCircuit(900, 80), new Fault.Spikes(9, 0.5), new Fault.NoiseBurst(2));
    SimulatedElectrode one = electrode(0.5);
    SimulatedElectrode two = electrode(0.5);
    for (int i = 0; i < 200; i++) {
      Instant time = T.plusSeconds(i);
      assertThat(two.reading(time, faults)).isEqualTo(one.reading(time, faults));
    }
  }

  @Test
  void aFaultIsThereFromItsBeginningToBeforeItsEndOnceOrAgain() {
    Fault silent = new Fault.Silent();
    ScheduledFault once =
        ScheduledFault.once(silent, Duration.ofMinutes(1), Duration.ofSeconds(10));
    ScheduledFault again =
        new ScheduledFault(
            silent,
            Duration.ofMinutes(1),
            Optional.of(Duration.ofSeconds(10)),
            Optional.of(Duration.ofMinutes(5)));
    ScheduledFault forGood =
        new ScheduledFault(silent, Duration.ofMinutes(1), Optional.empty(), Optional.empty());
    assertThat(seconds(once)).containsExactly(60, 69);
    assertThat(seconds(again)).containsExactly(60, 69, 360, 369, 660, 669);
    assertThat(seconds(forGood)).containsExactly(60, 899);
  }

  /** The first and the last second of each time that a fault is there, in a quarter of an hour. */
  private static List<Integer> seconds(ScheduledFault fault) {
    return IntStream.range(0, 900)
        .filter(s -> fault.isThere(Duration.ofSeconds(s)))
        .filter(
            s ->
                s == 899
                    || !fault.isThere(Duration.ofSeconds(s - 1))
                    || !fault.isThere(Duration.ofSeconds(s + 1)))
        .boxed()
        .toList();
  }

  @Test
  void faultsThatCannotBeAreRefused() {
    Duration second = Duration.ofSeconds(1);
    assertThatThrownBy(() -> new Fault.Flood(1)).hasMessage("a flood is of 2 to 1000 readings: 1");
    assertThatThrownBy(() -> new Fault.Spikes(1, -0.1))
        .hasMessage("a share of spikes is from 0 to 1: -0.1");
    assertThatThrownBy(() -> new Fault.CoatedMembrane(0.5))
        .hasMessage("a slow electrode is 1 or more times slower: 0.5");
    assertThatThrownBy(() -> new Fault.OffsetJump(Double.NaN))
        .hasMessage("the potential of a fault is a finite number");
    assertThatThrownBy(() -> new Fault.OpenCircuit(1, -1))
        .hasMessage("the noise of a fault is 0 or above and finite");
    assertThatThrownBy(() -> ScheduledFault.once(new Fault.Silent(), second, Duration.ZERO))
        .hasMessage("a fault begins at 0 or later and lasts longer than 0");
    assertThatThrownBy(
            () ->
                new ScheduledFault(
                    new Fault.Silent(), second, Optional.of(second), Optional.of(second)))
        .hasMessage("a fault that comes again is over before it does");
  }
}
