package org.restpoint.adapters.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.stability.reading.Reading;

/**
 * What every link keeps. A subclass says how its device is made, fed, taken away and given back.
 */
@Timeout(120)
public abstract class LinkContract {

  private static final int MOST_DELIVERIES = 300;

  private final CollectingListener listener = new CollectingListener();
  private Link link;
  private double lastDelivered;

  /** A link to the subclass's device, not started. */
  protected abstract Link createLink(LinkListener listener) throws Exception;

  /**
   * Lets one arrival come that reads as {@code millivolts}; without a device it comes to nothing.
   */
  protected abstract void deliver(double millivolts) throws Exception;

  /** Lets one arrival come that is not a reading. */
  protected abstract void deliverBad() throws Exception;

  /** Takes the device away: unplugged, disconnected. It is there when a test begins. */
  protected abstract void takeAway() throws Exception;

  /** Gives the device back under the same name. */
  protected abstract void bringBack() throws Exception;

  /** False for a source that cannot be lost. */
  protected boolean canBeLost() {
    return true;
  }

  @BeforeEach
  void makeTheLink() throws Exception {
    link = createLink(listener);
  }

  @AfterEach
  void closeTheLink() {
    link.close();
  }

  @Test
  void isNewUntilItIsStarted() {
    assertThat(link.check().condition()).isEqualTo(Condition.NEW);
    assertThat(link.check().lastArrival()).isEmpty();
    assertThat(link.counts()).isEqualTo(new LinkCounts(0, 0, 0, 0));
  }

  @Test
  void readsWhatArrives() throws Exception {
    link.start();
    Reading reading = readSomething();
    assertThat(reading.millivolts().getAsDouble()).isEqualTo(lastDelivered);
    assertThat(link.check().condition()).isEqualTo(Condition.READING);
    assertThat(link.check().detail()).isEmpty();
    assertThat(link.check().lastArrival()).isPresent();
  }

  @Test
  void startsWithoutItsDeviceAndReadsOnceItIsThere() throws Exception {
    assumeTrue(canBeLost());
    takeAway();
    link.start();
    eventually(() -> link.check().condition() == Condition.LOST);
    assertThat(link.check().detail()).isNotEmpty();
    bringBack();
    readSomething();
    assertThat(link.check().condition()).isEqualTo(Condition.READING);
  }

  @Test
  void losesItsDeviceAndReadsAgainWhenItComesBack() throws Exception {
    assumeTrue(canBeLost());
    link.start();
    readSomething();
    for (int times = 0; times < 3; times++) {
      takeAway();
      eventually(() -> link.check().condition() == Condition.LOST);
      assertThat(link.check().detail()).isNotEmpty();
      bringBack();
      readSomething();
      assertThat(link.check().condition()).isEqualTo(Condition.READING);
    }
    assertThat(link.counts().rejected()).isZero();
  }

  @Test
  void countsAddUp() throws Exception {
    link.start();
    readSomething();
    LinkCounts before = settled();

    deliver(101.5);
    deliverBad();
    deliver(102.5);
    deliverBad();
    deliverBad();
    eventually(() -> link.counts().received() == before.received() + 5);
    listener.full(true);
    deliver(103.5);
    eventually(() -> link.counts().received() == before.received() + 6);
    listener.full(false);
    deliver(104.5);
    eventually(() -> link.counts().received() == before.received() + 7);

    assertThat(link.counts())
        .isEqualTo(
            new LinkCounts(
                before.received() + 7,
                before.accepted() + 3,
                before.rejected() + 3,
                before.dropped() + 1));
    assertThat(listener.readings())
        .extracting(reading -> reading.millivolts().getAsDouble())
        .containsExactly(101.5, 102.5, 104.5);
    assertThat(listener.nextTrouble("hand-over-full").text()).isNotEmpty();
  }

  @Test
  void closesTwiceAndStaysClosed() throws Exception {
    link.start();
    readSomething();
    link.close();
    link.close();
    assertThat(link.check().condition()).isEqualTo(Condition.CLOSED);
    LinkCounts atClose = link.counts();
    deliver(105.5);
    assertThat(link.counts()).isEqualTo(atClose);
    assertThat(link.check().condition()).isEqualTo(Condition.CLOSED);
  }

  @Test
  void closesWithoutItsDevice() throws Exception {
    assumeTrue(canBeLost());
    takeAway();
    link.start();
    link.close();
    assertThat(link.check().condition()).isEqualTo(Condition.CLOSED);
    bringBack();
  }

  @Test
  void closesWithoutHavingBeenStarted() {
    link.close();
    link.close();
    assertThat(link.check().condition()).isEqualTo(Condition.CLOSED);
  }

  /** Delivers again and again until a reading comes: a link may need a moment to open. */
  private Reading readSomething() throws Exception {
    listener.readings().clear();
    for (int step = 0; step < MOST_DELIVERIES; step++) {
      lastDelivered = 1 + step;
      deliver(lastDelivered);
      Reading reading = listener.readings().poll(100, TimeUnit.MILLISECONDS);
      if (reading != null) {
        return drained(reading);
      }
    }
    throw new AssertionError("no reading came; the link is " + link.check());
  }

  /** Takes what was delivered before the link was quick enough, up to the last delivered. */
  private Reading drained(Reading first) {
    Reading reading = first;
    while (reading.millivolts().getAsDouble() != lastDelivered) {
      reading = listener.nextReading();
    }
    return reading;
  }

  /** The counts, once the last reading taken is counted too. */
  private LinkCounts settled() throws InterruptedException {
    LinkCounts[] counts = {link.counts()};
    eventually(
        () -> {
          LinkCounts now = link.counts();
          boolean same = now.equals(counts[0]) && now.accepted() > 0;
          counts[0] = now;
          return same;
        });
    return counts[0];
  }

  private void eventually(BooleanSupplier so) throws InterruptedException {
    Eventually.become("the link's state or counts", so);
  }
}
