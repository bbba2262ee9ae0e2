package org.restpoint.adapters.bus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.time.Duration;
import java.time.InstantSource;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.restpoint.adapters.link.CollectingListener;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.wire.WireSource.Attempt.Refused;

/** Several probes on one wire, which is in memory, and time that passes when the test says so. */
@Timeout(120)
class BusTest {

  private static final Duration SECOND = Duration.ofSeconds(1);
  private static final Duration NO_DATA_AFTER = Duration.ofSeconds(30);

  private final FakeWire wire = new FakeWire();
  private final AtomicLong nanos = new AtomicLong(Long.MAX_VALUE - NO_DATA_AFTER.toNanos());
  private final Bus bus = new Bus(wire, InstantSource.system(), nanos::get);
  private final CollectingListener heardA = new CollectingListener();
  private final CollectingListener heardB = new CollectingListener();
  private final Link a = probe("a", SECOND, heardA);
  private final Link b = probe("b", SECOND.multipliedBy(3), heardB);

  private Link probe(String name, Duration every, CollectingListener listener) {
    return bus.link(
        new PollSettings("probe " + name, every, NO_DATA_AFTER, "Look at " + name),
        new LineExchange(name, Duration.ofMillis(500)),
        listener);
  }

  @AfterEach
  void close() {
    bus.close();
  }

  private void passes(Duration span) {
    nanos.addAndGet(span.toNanos());
  }

  private String asked() throws InterruptedException {
    String ask = wire.asks.poll(30, TimeUnit.SECONDS);
    assertThat(ask).isNotNull();
    return String.valueOf(ask);
  }

  private void answers(String probe, String line) throws InterruptedException {
    assertThat(asked()).isEqualTo(probe);
    wire.send(line + "\n");
  }

  private void bothAreRead() throws InterruptedException {
    a.start();
    answers("a", "1");
    heardA.nextReading();
    b.start();
    answers("b", "2");
    heardB.nextReading();
  }

  private static void becomes(Condition condition, Link link) throws InterruptedException {
    Eventually.become(condition, () -> link.check().condition() == condition);
  }

  @Test
  void eachProbeIsAskedAtItsOwnInterval() throws Exception {
    bothAreRead();
    for (int second = 1; second <= 6; second++) {
      passes(SECOND);
      answers("a", "11");
      assertThat(heardA.nextReading().millivolts()).hasValue(11);
      if (second % 3 == 0) {
        answers("b", "12");
        assertThat(heardB.nextReading().millivolts()).hasValue(12);
      }
    }
    assertThat(wire.asks).isEmpty();
  }

  @Test
  void asksThatWereMissedAreNotMadeUpForAndWhoeverWaitsLongestComesFirst() throws Exception {
    bothAreRead();
    passes(SECOND.multipliedBy(19));
    answers("a", "1");
    heardA.nextReading();
    answers("b", "2");
    heardB.nextReading();
    passes(SECOND);
    answers("a", "1");
    heardA.nextReading();
    Eventually.become("counted", () -> a.counts().received() == 3);
    assertThat(b.counts().received()).isEqualTo(2);
    assertThat(wire.asks).isEmpty();
  }

  @Test
  void anAnswerThatTakesItsTimeLeavesTheWireToOthers() throws Exception {
    a.start();
    answers("a", "later a2");
    b.start();
    answers("b", "2");
    heardB.nextReading();
    assertThat(wire.asks).isEmpty();
    passes(SECOND);
    answers("a2", "7");
    assertThat(heardA.nextReading().millivolts()).hasValue(7);
    passes(SECOND);
    answers("a", "8");
    assertThat(heardA.nextReading().millivolts()).hasValue(8);
  }

  @Test
  void whatWasStillToBeAskedIsForgottenWithTheWire() throws Exception {
    a.start();
    answers("a", "later a2");
    becomes(Condition.READING, a);
    wire.unplug();
    becomes(Condition.LOST, a);
    wire.plug();
    answers("a", "5");
    assertThat(heardA.nextReading().millivolts()).hasValue(5);
  }

  @Test
  void aLostWireIsToldOnceAndAllItsProbesAreLost() throws Exception {
    bothAreRead();
    passes(SECOND);
    assertThat(asked()).isEqualTo("a");
    wire.unplug();
    assertThat(heardA.nextTrouble()).isEqualTo(wire.lost());
    becomes(Condition.LOST, b);
    assertThat(b.check().detail()).isEqualTo("the wire was lost. Plug in again");
    int attempts = wire.attempts.get();
    Eventually.become("tried again and again", () -> wire.attempts.get() > attempts + 3);
    wire.plug();
    answers("a", "1");
    assertThat(heardA.nextTrouble()).isEqualTo(wire.back());
    answers("b", "2");
    heardA.nextReading();
    heardB.nextReading();
    assertThat(heardA.troubles()).isEmpty();
    assertThat(heardB.troubles()).isEmpty();
    assertThat(a.check().condition()).isEqualTo(Condition.READING);
  }

  @Test
  void aConnectionThatEndsWhileNobodyIsAskedIsMadeAgainInSilence() throws Exception {
    bothAreRead();
    wire.drop();
    answers("a", "3");
    answers("b", "4");
    assertThat(heardA.nextReading().millivolts()).hasValue(3);
    assertThat(heardB.nextReading().millivolts()).hasValue(4);
    assertThat(heardA.troubles()).isEmpty();
  }

  @Test
  void aWireThatIsPulledWhileNobodyIsAskedIsLost() throws Exception {
    bothAreRead();
    wire.unplug();
    assertThat(heardA.nextTrouble()).isEqualTo(wire.lost());
    becomes(Condition.LOST, b);
  }

  @Test
  void aWireThatCannotBeOpenedIsToldWithItsReason() throws Exception {
    wire.refuse(new Refused(FakeWire.BUSY, false));
    a.start();
    b.start();
    assertThat(heardA.nextTrouble()).isEqualTo(FakeWire.BUSY);
    becomes(Condition.LOST, b);
    assertThat(b.check().detail()).isEqualTo("the wire is busy. Close it");
    wire.plug();
    answers("a", "1");
    assertThat(heardA.nextTrouble()).isEqualTo(wire.back());
    assertThat(heardB.troubles()).isEmpty();
  }

  @Test
  void aProbeThatDoesNotAnswerIsToldOnceAMinuteAndThenAsSilent() throws Exception {
    a.start();
    answers("a", "1");
    heardA.nextReading();
    passes(SECOND);
    assertThat(asked()).isEqualTo("a");
    while (a.check().condition() != Condition.SILENT) {
      passes(Duration.ofMillis(200));
      wire.asks.poll(10, TimeUnit.MILLISECONDS);
    }
    assertThat(heardA.nextTrouble())
        .isEqualTo(new LinkTrouble("no-answer", "probe a did not answer", "Look at a"));
    assertThat(heardA.nextTrouble())
        .isEqualTo(new LinkTrouble("no-data", "probe a has not answered for 30 s", "Look at a"));
    while (a.check().condition() != Condition.READING) {
      if (wire.asks.poll(10, TimeUnit.MILLISECONDS) == null) {
        passes(Duration.ofMillis(200));
      } else {
        wire.send("2\n");
        heardA.readings().poll(200, TimeUnit.MILLISECONDS);
      }
    }
    assertThat(heardA.nextTrouble("data-back").text()).isEqualTo("probe a answers again");
    assertThat(a.counts().rejected()).isZero();
  }

  @Test
  void aWireThatIsGivenUpIsOpenedAnewAndSilenceGoesOn() throws Exception {
    Link patient =
        bus.link(
            new PollSettings("probe c", SECOND, NO_DATA_AFTER, "Look at c"),
            new LineExchange("c", NO_DATA_AFTER.multipliedBy(2)),
            heardA);
    patient.start();
    answers("c", "1");
    heardA.nextReading();
    passes(SECOND);
    for (int second = 0; second < 30; second++) {
      answers("c", "stale");
      passes(SECOND);
    }
    becomes(Condition.SILENT, patient);
    assertThat(wire.attempts.get()).isGreaterThanOrEqualTo(30);
    assertThat(heardA.nextTrouble().code()).isEqualTo("no-answer");
    assertThat(heardA.nextTrouble().text()).isEqualTo("probe c has not answered for 30 s");
    answers("c", "2");
    assertThat(heardA.nextTrouble().code()).isEqualTo("data-back");
  }

  @Test
  void anAnswerThatIsNoReadingIsToldWithItsReasonAndLaterOnesTogether() throws Exception {
    a.start();
    answers("a", "over");
    assertThat(heardA.nextTrouble())
        .isEqualTo(
            new LinkTrouble(
                "answer-rejected",
                "probe a gave an answer that is not a reading: \"over\" is no number",
                "Look at the device"));
    passes(SECOND);
    answers("a", "under");
    Eventually.become("two rejected", () -> a.counts().rejected() == 2);
    passes(SECOND);
    answers("a", "odd");
    Eventually.become("three rejected", () -> a.counts().rejected() == 3);
    passes(Duration.ofMinutes(1));
    // The bus may ask once more before it looks at what has fallen due.
    answers("a", "1");
    assertThat(heardA.nextTrouble("answer-rejected").text())
        .isEqualTo(
            "probe a gave 2 more answers that are not a reading, the latest: \"odd\" is no number");
  }

  @Test
  void bytesThatNobodyAskedForAreCountedAndTold() throws Exception {
    bothAreRead();
    wire.send("noise");
    assertThat(heardA.nextTrouble().text())
        .isEqualTo("5 bytes came over the made-up wire that nobody had asked for");
    passes(SECOND);
    answers("a", "9");
    assertThat(heardA.nextReading().millivolts()).hasValue(9);
    assertThat(a.counts().rejected()).isZero();
  }

  @Test
  void aLinkThatIsClosedLeavesTheWireToTheOthersAndTheLastOneClosesIt() throws Exception {
    bothAreRead();
    a.close();
    passes(SECOND.multipliedBy(3));
    answers("b", "6");
    assertThat(heardB.nextReading().millivolts()).hasValue(6);
    assertThat(wire.isOpen()).isTrue();
    b.close();
    assertThat(wire.isOpen()).isFalse();
    assertThat(a.counts().received()).isEqualTo(1);
  }

  @Test
  void theEndOfTheProcessIsNotTakenForALoss() throws Exception {
    bothAreRead();
    wire.farewell().run();
    wire.unplug();
    assertThat(a.check().condition()).isEqualTo(Condition.CLOSED);
    assertThat(b.check().condition()).isEqualTo(Condition.CLOSED);
    assertThat(heardA.troubles()).isEmpty();
    assertThatIllegalStateException().isThrownBy(b::start);
  }
}
