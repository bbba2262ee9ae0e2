package org.restpoint.adapters.simulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.adapters.link.CollectingListener;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.stability.reading.Reading;

class SimulatedLinkTest {

  private static final Instant NOW = Instant.parse("2026-04-02T14:03:00.123456Z");
  private static final Instant START = Instant.parse("2026-04-02T14:03:00.123Z");
  private static final ElectrodeTraits TRAITS =
      ElectrodeTraits.of(100.0, 200.0, -1, Duration.ofSeconds(1), 0.0, 1);
  private static final Beaker WEAK = new Beaker(1e-4, 25.0);

  @Test
  void readingsAreStampedAnIntervalApartHoweverFastTheyCome() throws Exception {
    CollectingListener heard = new CollectingListener();
    try (SimulatedLink link = link(heard, Duration.ofSeconds(10), 10_000)) {
      assertThat(link.check().condition()).isEqualTo(Condition.NEW);
      link.start();
      List<Reading> readings = heard.nextReadings(50);
      for (int k = 0; k < readings.size(); k++) {
        assertThat(readings.get(k).time()).isEqualTo(START.plusSeconds(10L * k));
      }
      assertThat(link.check().condition()).isEqualTo(Condition.READING);
    }
  }

  @Test
  void theElectrodeCanBeMovedWhileItReads() throws Exception {
    CollectingListener heard = new CollectingListener();
    try (SimulatedLink link = link(heard, Duration.ofSeconds(1), 1_000)) {
      assertThatThrownBy(() -> link.immerse(WEAK))
          .hasMessage("the simulated electrode is not started");
      link.start();
      Reading before = heard.nextReading();
      assertThat(before.millivolts().getAsDouble()).isCloseTo(318.32, within(0.005));
      Instant moved = link.immerse(new Beaker(1e-4, 15.0));
      assertThat(moved).isAfterOrEqualTo(before.time());
      // Sixty time constants later it is at rest: 200 + 57.175 · 4, at 15 °C.
      Reading later;
      do {
        later = heard.nextReading();
      } while (later.time().isBefore(moved.plusSeconds(60)));
      assertThat(later.millivolts().getAsDouble()).isCloseTo(428.70, within(0.005));
      assertThat(later.celsius()).hasValue(15.0);
    }
  }

  @Test
  void aFullHandOverIsCountedAndClosingIsFinal() throws Exception {
    CollectingListener heard = new CollectingListener();
    SimulatedLink link = link(heard, Duration.ofHours(1), 1e9);
    link.start();
    heard.nextReadings(3);
    heard.full(true);
    Eventually.become("two are dropped", () -> link.counts().dropped() >= 2);
    link.close();
    link.close();
    LinkCounts counts = link.counts();
    assertThat(counts.accepted()).isEqualTo(heard.taken());
    assertThat(counts.received()).isEqualTo(counts.accepted() + counts.dropped());
    assertThat(link.check().condition()).isEqualTo(Condition.CLOSED);
    assertThat(link.check().lastArrival()).contains(NOW);
  }

  @Test
  void closingDoesNotWaitForTheNextReading() throws Exception {
    CollectingListener heard = new CollectingListener();
    SimulatedLink link = link(heard, Duration.ofHours(10), 1);
    link.start();
    heard.nextReading();
    link.close();
    assertThat(link.counts()).isEqualTo(new LinkCounts(1, 1, 0, 0));
  }

  @Test
  void intervalsAndSpeedsThatCannotBeAreRefused() {
    assertThatThrownBy(() -> SimulatedSettings.of(TRAITS, WEAK, Duration.ofNanos(1_500_000), 1))
        .hasMessage("the interval is not a whole number of milliseconds above 0");
    assertThatThrownBy(() -> SimulatedSettings.of(TRAITS, WEAK, Duration.ZERO, 1))
        .hasMessage("the interval is not a whole number of milliseconds above 0");
    assertThatThrownBy(() -> SimulatedSettings.of(TRAITS, WEAK, Duration.ofSeconds(1), 0))
        .hasMessage("the speed is not above 0 and finite");
  }

  private static SimulatedLink link(CollectingListener heard, Duration interval, double speed) {
    return new SimulatedLink(
        SimulatedSettings.of(TRAITS, new Beaker(1e-2, 25.0), interval, speed),
        heard,
        InstantSource.fixed(NOW),
        System::nanoTime);
  }
}
