package org.restpoint.adapters.link;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.stability.reading.Reading;

/** What a link to a device keeps: it sends what it likes, and it can be lost and come back. */
public abstract class DeviceContract extends AbsentSourceContract {

  /** Lets one arrival come that is not a reading. */
  protected abstract void deliverBad() throws Exception;

  @Override
  protected final boolean sends(Reading reading, double delivered) {
    return reading.millivolts().getAsDouble() == delivered;
  }

  @Test
  void losesItsDeviceAndReadsAgainWhenItComesBack() throws Exception {
    link().start();
    readSomething();
    for (int times = 0; times < 3; times++) {
      takeAway();
      becomesLost();
      bringBack();
      readSomething();
      assertThat(link().check().condition()).isEqualTo(Condition.READING);
    }
    assertThat(link().counts().rejected()).isZero();
  }

  @Test
  void countsAddUp() throws Exception {
    link().start();
    readSomething();
    Eventually.become("all counted", () -> link().counts().accepted() == listener().taken());
    LinkCounts before = link().counts();

    deliver(101.5);
    deliverBad();
    deliver(102.5);
    deliverBad();
    deliverBad();
    received(before, 5);
    listener().full(true);
    deliver(103.5);
    received(before, 6);
    listener().full(false);
    deliver(104.5);
    received(before, 7);

    assertThat(link().counts())
        .isEqualTo(
            new LinkCounts(
                before.received() + 7,
                before.accepted() + 3,
                before.rejected() + 3,
                before.dropped() + 1));
    assertThat(listener().readings())
        .extracting(reading -> reading.millivolts().getAsDouble())
        .containsExactly(101.5, 102.5, 104.5);
  }

  private void received(LinkCounts before, int more) throws InterruptedException {
    Eventually.become(
        more + " more received", () -> link().counts().received() == before.received() + more);
  }
}
