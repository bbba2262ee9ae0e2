package org.restpoint.adapters.simulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.restpoint.adapters.link.CollectingListener;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.stability.reading.Reading;

/** Visits and faults come by the schedule, and the link says what that of a real device would. */
class SimulatedFaultsLinkTest {

  private static final Instant START = Instant.parse("2026-04-02T14:03:00Z");
  private static final Duration SECOND = Duration.ofSeconds(1);
  private static final ElectrodeTraits TRAITS =
      ElectrodeTraits.of(100.0, 200.0, -1, Duration.ofMillis(1), 0.0, 1);
  private static final Beaker WEAK = new Beaker(1e-4, 25.0);
  private static final Beaker STRONG = new Beaker(1e-2, 25.0);
  private static final double FAST = 1_000;

  private final CollectingListener heard = new CollectingListener();
  private final List<LinkHealth> healthAtTrouble = new ArrayList<>();
  private SimulatedLink link = link(atRest(), heard);

  @AfterEach
  void close() {
    link.close();
  }

  private void start(SimulatedSettings settings) {
    LinkListener listener =
        new LinkListener() {
          @Override
          public boolean reading(Reading reading) {
            return heard.reading(reading);
          }

          @Override
          public void trouble(LinkTrouble trouble) {
            healthAtTrouble.add(link.check());
            heard.trouble(trouble);
          }
        };
    link = link(settings, listener);
    link.start();
  }

  private static SimulatedLink link(SimulatedSettings settings, LinkListener listener) {
    return new SimulatedLink(settings, listener, InstantSource.fixed(START), System::nanoTime);
  }

  private static SimulatedSettings electrode(List<Visit> visits, ScheduledFault... faults) {
    return new SimulatedSettings(
        new Subject.Electrode(TRAITS, visits, Swing.NONE),
        SECOND,
        Duration.ofSeconds(30),
        List.of(faults),
        FAST);
  }

  private static SimulatedSettings atRest(ScheduledFault... faults) {
    return electrode(List.of(Visit.forGood(STRONG)), faults);
  }

  private static ScheduledFault fault(Fault fault, int atSeconds, int seconds) {
    return ScheduledFault.once(fault, Duration.ofSeconds(atSeconds), Duration.ofSeconds(seconds));
  }

  private List<Long> secondsOf(List<Reading> readings) {
    return readings.stream().map(r -> Duration.between(START, r.time()).toSeconds()).toList();
  }

  @Test
  void anElectrodeThatIsUnpluggedIsLostAndComesBack() {
    start(atRest(fault(new Fault.Unplugged(), 3, 100)));
    assertThat(secondsOf(heard.nextReadings(5))).containsExactly(0L, 1L, 2L, 103L, 104L);
    assertThat(heard.nextTrouble())
        .isEqualTo(
            new LinkTrouble(
                "simulated-lost",
                "the simulated electrode was unplugged: the station file's list of faults says so",
                "It is plugged in again by itself when the fault unplugged is over"));
    assertThat(heard.nextTrouble())
        .isEqualTo(
            new LinkTrouble("simulated-back", "the simulated electrode is plugged in again", ""));
    link.close();
    assertThat(heard.troubles()).as("no word of silence while it was lost").isEmpty();
    assertThat(healthAtTrouble)
        .extracting(LinkHealth::condition)
        .containsExactly(Condition.LOST, Condition.READING);
    assertThat(healthAtTrouble.get(0).detail()).startsWith("the simulated electrode was unplugged");
    LinkCounts counts = link.counts();
    assertThat(counts).isEqualTo(new LinkCounts(heard.taken(), heard.taken(), 0, 0));
  }

  @Test
  void aSilentElectrodeIsToldOnceItsTimeIsOver() {
    start(atRest(fault(new Fault.Silent(), 2, 20), fault(new Fault.Silent(), 60, 40)));
    assertThat(heard.nextTrouble())
        .isEqualTo(
            new LinkTrouble(
                "no-data",
                "the simulated electrode has sent nothing for 30 s: the station file's list of"
                    + " faults says so",
                "It sends again by itself when the fault silent is over"));
    assertThat(heard.nextTrouble())
        .isEqualTo(new LinkTrouble("data-back", "the simulated electrode sends again", ""));
    assertThat(healthAtTrouble)
        .extracting(LinkHealth::condition)
        .containsExactly(Condition.SILENT, Condition.READING);
    assertThat(secondsOf(heard.nextReadings(42)))
        .startsWith(0L, 1L, 22L)
        .endsWith(58L, 59L, 100L, 101L);
  }

  @Test
  void aFloodSendsAHundredTimesAsMuchWithinItsInterval() {
    start(atRest(fault(new Fault.Flood(100), 1, 1)));
    List<Reading> readings = heard.nextReadings(103);
    for (int i = 0; i <= 100; i++) {
      assertThat(readings.get(i + 1).time()).isEqualTo(START.plusSeconds(1).plusMillis(10L * i));
    }
    assertThat(readings.get(102).time()).isEqualTo(START.plusSeconds(3));
  }

  @Test
  void aFaultAtTheElectrodeIsInItsReadingsAlone() {
    start(atRest(fault(new Fault.OffsetJump(10), 2, 2)));
    assertThat(heard.nextReadings(6))
        .extracting(r -> r.millivolts().getAsDouble())
        .containsExactly(318.32, 318.32, 328.32, 328.32, 318.32, 318.32);
    link.close();
    assertThat(heard.troubles()).isEmpty();
  }

  @Test
  void visitsComeAgainUnlessTheLastIsForGood() {
    Duration two = Duration.ofSeconds(2);
    start(electrode(List.of(Visit.of(WEAK, two), Visit.of(STRONG, Duration.ofSeconds(3)))));
    assertThat(strong(heard.nextReadings(11)))
        .as("a moved electrode is at rest a second later")
        .containsExactly(0, 0, 0, 1, 1, 1, 0, 0, 1, 1, 1);
    link.close();
    heard.readings().clear();
    start(electrode(List.of(Visit.of(WEAK, two), Visit.forGood(STRONG))));
    assertThat(strong(heard.nextReadings(9))).containsExactly(0, 0, 0, 1, 1, 1, 1, 1, 1);
  }

  private static List<Integer> strong(List<Reading> readings) {
    return readings.stream().map(r -> r.millivolts().getAsDouble() < 400 ? 1 : 0).toList();
  }

  @Test
  void aThermometerSendsItsSwingingTemperatureAlone() {
    start(
        new SimulatedSettings(
            new Subject.Thermometer(12, new Swing(3, Duration.ofSeconds(40)), Display.USUAL),
            Duration.ofSeconds(10),
            Duration.ofSeconds(30),
            List.of(),
            FAST));
    List<Reading> readings = heard.nextReadings(4);
    assertThat(readings).allMatch(r -> r.millivolts().isEmpty());
    assertThat(readings)
        .extracting(Reading::celsius)
        .containsExactly(
            OptionalDouble.of(12),
            OptionalDouble.of(15),
            OptionalDouble.of(12),
            OptionalDouble.of(9));
    assertThat(link.simulatedTime()).isAfterOrEqualTo(readings.get(3).time());
    assertThatThrownBy(() -> link.immerse(WEAK))
        .hasMessage("the simulated thermometer is in no beaker");
  }

  @Test
  void schedulesThatCannotBeAreRefused() {
    assertThatThrownBy(() -> electrode(List.of(Visit.forGood(WEAK), Visit.forGood(STRONG))))
        .hasMessage("only the last visit is for good");
    assertThatThrownBy(() -> electrode(List.of()))
        .hasMessage("an electrode stands in one solution at least");
    assertThatThrownBy(() -> electrode(List.of(Visit.of(WEAK, Duration.ofMillis(999)))))
        .hasMessage("a visit is not shorter than an interval");
    assertThatThrownBy(() -> new Visit(WEAK, Optional.of(Duration.ZERO)))
        .hasMessage("a visit lasts longer than 0");
    Subject thermometer = new Subject.Thermometer(12, Swing.NONE, Display.USUAL);
    List<ScheduledFault> bubble = List.of(fault(new Fault.AirBubble(1, 2), 1, 1));
    assertThatThrownBy(
            () -> new SimulatedSettings(thermometer, SECOND, Duration.ofSeconds(9), bubble, 1))
        .hasMessage("a thermometer has the faults of its line alone");
    assertThatThrownBy(() -> new SimulatedSettings(thermometer, SECOND, SECOND, List.of(), 1))
        .hasMessage("the no-data limit is longer than an interval");
  }
}
