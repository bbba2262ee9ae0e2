package org.restpoint.adapters.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.stability.reading.Reading;

/**
 * What every link keeps, whatever it reads. What may be absent keeps {@link AbsentSourceContract}
 * too, and a device that sends on its own keeps {@link DeviceContract}.
 */
@Timeout(120)
public abstract class LinkContract {

  private static final int MOST_DELIVERIES = 300;

  private final CollectingListener listener = new CollectingListener();
  private Link link;
  private double lastDelivered;

  /** A link to the subclass's source, which is there; not started. */
  protected abstract Link createLink(LinkListener listener) throws Exception;

  /**
   * Lets one arrival come that reads as {@code millivolts}. Without a device it comes to nothing; a
   * source that sends by itself goes on doing so.
   */
  protected abstract void deliver(double millivolts) throws Exception;

  /**
   * Whether the source sends this; for a device, what was delivered last.
   *
   * @param delivered the latest potential that it was asked to send
   */
  protected abstract boolean sends(Reading reading, double delivered);

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
    assertThat(link.check()).isEqualTo(new LinkHealth(Condition.NEW, "", Optional.empty()));
    assertThat(link.counts()).isEqualTo(new LinkCounts(0, 0, 0, 0));
  }

  @Test
  void readsWhatArrives() throws Exception {
    link.start();
    assertThat(sends(readSomething(), lastDelivered)).isTrue();
    assertThat(link.check().condition()).isEqualTo(Condition.READING);
    assertThat(link.check().detail()).isEmpty();
    assertThat(link.check().lastArrival()).isPresent();
  }

  @Test
  void whatIsNotTakenIsCountedAndTold() throws Exception {
    link.start();
    readSomething();
    listener.full(true);
    for (int step = 0; link.counts().dropped() == 0; step++) {
      assertThat(step).as("%s", link.counts()).isLessThan(MOST_DELIVERIES);
      deliver(step);
      pause();
    }
    assertThat(listener.nextTrouble("hand-over-full").text()).contains("was dropped");
    listener.full(false);
    readSomething();
    link.close();
    assertThat(link.counts().accepted()).isEqualTo(listener.taken());
  }

  @Test
  void isStartedOnceAndNotAfterItsEnd() {
    link.start();
    assertThatIllegalStateException().isThrownBy(link::start);
    link.close();
    assertThatIllegalStateException().isThrownBy(link::start);
    assertThat(link.check().condition()).isEqualTo(Condition.CLOSED);
  }

  @Test
  void closesTwiceAndStaysClosed() throws Exception {
    link.start();
    readSomething();
    link.close();
    link.close();
    assertThat(link.check().condition()).isEqualTo(Condition.CLOSED);
    assertThat(link.check().lastArrival()).isPresent();
    LinkCounts atClose = link.counts();
    deliver(105.5);
    pause();
    assertThat(link.counts()).isEqualTo(atClose);
    assertThat(link.check().condition()).isEqualTo(Condition.CLOSED);
  }

  @Test
  void closesWithoutHavingBeenStarted() {
    link.close();
    link.close();
    assertThat(link.check().condition()).isEqualTo(Condition.CLOSED);
  }

  /** The link under test. */
  protected final Link link() {
    return link;
  }

  /** Whom it reports to. */
  protected final CollectingListener listener() {
    return listener;
  }

  /** Delivers again and again until a reading comes: a link may need a moment to open. */
  protected final Reading readSomething() throws Exception {
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

  /** Passes over what was delivered before the link was quick enough. */
  private Reading drained(Reading first) {
    Reading reading = first;
    while (!sends(reading, lastDelivered)) {
      reading = listener.nextReading();
    }
    return reading;
  }

  private void pause() throws InterruptedException {
    listener.readings().poll(50, TimeUnit.MILLISECONDS);
  }
}
