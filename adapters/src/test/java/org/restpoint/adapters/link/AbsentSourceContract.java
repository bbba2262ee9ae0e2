package org.restpoint.adapters.link;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.restpoint.adapters.link.LinkHealth.Condition;

/** What a link keeps whose source may not be there yet: a device, a broker, a file. */
public abstract class AbsentSourceContract extends LinkContract {

  /** Takes the source away: unplugged, disconnected. It is there when a test begins. */
  protected abstract void takeAway() throws Exception;

  /** Gives it back under the same name. */
  protected abstract void bringBack() throws Exception;

  @Test
  void startsWithoutItsSourceAndReadsOnceItIsThere() throws Exception {
    takeAway();
    link().start();
    becomesLost();
    bringBack();
    readSomething();
    assertThat(link().check().condition()).isEqualTo(Condition.READING);
  }

  @Test
  void closesWithoutItsSource() throws Exception {
    takeAway();
    link().start();
    becomesLost();
    link().close();
    assertThat(link().check().condition()).isEqualTo(Condition.CLOSED);
    bringBack();
    assertThat(link().counts().received()).isZero();
  }

  /** Waits until the link is lost and says why. */
  protected final void becomesLost() throws InterruptedException {
    Eventually.become("lost", () -> link().check().condition() == Condition.LOST);
    assertThat(link().check().detail()).isNotEmpty();
  }
}
