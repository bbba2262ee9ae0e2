package org.restpoint.adapters.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.restpoint.adapters.link.LinkHealth.Condition;

/** How a link's thread ends, and what its state says of it. */
@Timeout(60)
class LinkThreadTest {

  private static final Duration LONG = Duration.ofSeconds(30);

  private final LinkState state = new LinkState();

  private static void interruptedWork() throws InterruptedException {
    throw new InterruptedException("somebody wants it to end");
  }

  @Test
  void anInterruptedThreadLeavesALostLink() {
    LinkThread thread = new LinkThread("the made-up meter", state, LinkThreadTest::interruptedWork);
    state.start("it");
    thread.start();
    assertThat(thread.close(LONG)).isTrue();
    assertThat(state.health())
        .isEqualTo(
            new LinkHealth(
                Condition.LOST, "the made-up meter has stopped reading", Optional.empty()));
  }

  @Test
  void aThreadThatIsDoneLeavesTheStateAsItIs() {
    LinkThread thread =
        new LinkThread("the made-up meter", state, () -> state.become(Condition.ENDED, ""));
    state.start("it");
    thread.start();
    assertThat(thread.close(LONG)).isTrue();
    assertThat(state.condition()).isEqualTo(Condition.ENDED);
  }

  @Test
  void closingEndsAPause() {
    CountDownLatch paused = new CountDownLatch(1);
    LinkThread[] thread = new LinkThread[1];
    thread[0] =
        new LinkThread(
            "the made-up meter",
            state,
            () -> {
              paused.countDown();
              assertThat(thread[0].pause(Duration.ofDays(1).toNanos())).isTrue();
            });
    thread[0].start();
    await(paused);
    assertThat(thread[0].isClosing()).isFalse();
    assertThat(thread[0].close(LONG)).isTrue();
    assertThat(thread[0].isClosing()).isTrue();
  }

  @Test
  void closingDoesNotWaitLongerThanItsPatience() {
    CountDownLatch stuck = new CountDownLatch(1);
    LinkThread thread = new LinkThread("the made-up meter", state, () -> await(stuck));
    thread.start();
    assertThat(thread.close(Duration.ofMillis(20))).isFalse();
    state.become(Condition.CLOSED, "");
    stuck.countDown();
    assertThat(thread.close(LONG)).isTrue();
  }

  @Test
  void aClosedLinkStaysClosed() {
    state.start("it");
    state.arrived(Instant.EPOCH);
    state.become(Condition.CLOSED, "");
    state.arrived(Instant.EPOCH.plusSeconds(1));
    assertThat(state.become(Condition.READING, "")).isFalse();
    assertThat(state.health())
        .isEqualTo(new LinkHealth(Condition.CLOSED, "", Optional.of(Instant.EPOCH)));
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      throw new AssertionError("interrupted while waiting", e);
    }
  }
}
