package org.restpoint.adapters.bus;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.wire.WireSource.Attempt.Refused;

class WireNewsTest {

  private static final Refused ABSENT = new Refused(FakeWire.ABSENT, true);
  private static final Refused BUSY = new Refused(FakeWire.BUSY, false);
  private static final LinkTrouble LOST = new FakeWire().lost();

  private final WireNews news = new WireNews();

  @Test
  void theFirstRefusalIsToldAtOnceAndOnlyOnce() {
    assertThat(news.refused(ABSENT)).contains(ABSENT.trouble());
    assertThat(news.refused(ABSENT)).isEmpty();
    assertThat(news.works()).isTrue();
    assertThat(news.works()).isFalse();
  }

  @Test
  void anotherRefusalIsToldWhenTwoAttemptsAgree() {
    news.refused(ABSENT);
    assertThat(news.refused(BUSY)).isEmpty();
    assertThat(news.refused(ABSENT)).isEmpty();
    assertThat(news.refused(BUSY)).isEmpty();
    assertThat(news.refused(BUSY)).contains(BUSY.trouble());
    assertThat(news.refused(BUSY)).isEmpty();
  }

  @Test
  void afterALossItIsNothingNewThatTheDeviceIsAway() {
    assertThat(news.lost(LOST)).isEqualTo(LOST);
    assertThat(news.refused(ABSENT)).isEmpty();
    assertThat(news.refused(ABSENT)).isEmpty();
    assertThat(news.refused(BUSY)).isEmpty();
    assertThat(news.refused(BUSY)).contains(BUSY.trouble());
    assertThat(news.works()).isTrue();
  }

  @Test
  void aConnectionThatEndsWhileIdleAndIsMadeAgainIsNotTold() {
    news.lostIdle(LOST);
    assertThat(news.works()).isFalse();
    assertThat(news.refused(ABSENT)).contains(ABSENT.trouble());
  }

  @Test
  void aWireThatIsLostWhileIdleAndStaysAwayIsToldAsLost() {
    news.lostIdle(LOST);
    assertThat(news.refused(ABSENT)).contains(LOST);
    assertThat(news.refused(ABSENT)).isEmpty();
    assertThat(news.works()).isTrue();
  }
}
