package org.restpoint.adapters.bus;

import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class PollSettingsTest {

  private static final Duration SECOND = Duration.ofSeconds(1);

  @Test
  void aSpanMustBeAboveZero() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new PollSettings("it", Duration.ZERO, SECOND, ""))
        .withMessage("the poll interval PT0S is not above zero");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new PollSettings("it", SECOND, Duration.ofMillis(-1), ""))
        .withMessage("the no-data limit PT-0.001S is not above zero");
  }
}
