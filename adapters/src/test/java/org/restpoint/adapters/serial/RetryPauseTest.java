package org.restpoint.adapters.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class RetryPauseTest {

  /** With the tenth of a second that shows where a line begins this leaves room to two seconds. */
  @Test
  void isASecondAtMostHoweverLongADeviceIsAway() {
    RetryPause pause = new RetryPause();
    assertThat(pause.after(false)).isEqualTo(Duration.ofMillis(200));
    assertThat(pause.after(false)).isEqualTo(Duration.ofMillis(400));
    for (int attempt = 0; attempt < 1_000; attempt++) {
      assertThat(pause.after(false)).isBetween(Duration.ofMillis(800), Duration.ofSeconds(1));
    }
    assertThat(pause.after(false)).isEqualTo(Duration.ofSeconds(1));
  }

  @Test
  void isShortAgainOnceADeviceWasRead() {
    RetryPause pause = new RetryPause();
    pause.after(false);
    pause.after(false);
    assertThat(pause.after(true)).isEqualTo(Duration.ofMillis(100));
  }
}
