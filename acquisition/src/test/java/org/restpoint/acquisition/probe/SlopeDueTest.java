package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.restpoint.config.station.Calibrate;

/** When the slope has not been checked for a while, all standards are read again. */
class SlopeDueTest {

  private static final Setup SETUP =
      Setup.nitrate()
          .restandardize("mid", new Calibrate.Every.Samples(1))
          .validFor(Duration.ofDays(30))
          .slopeEvery(Duration.ofDays(7));

  @Test
  void aSlopeThatWasNotCheckedForTooLongIsFlaggedUntilALineWasFitted() {
    Bench bench = Bench.of(SETUP).calibrate("low").calibrate("mid").calibrate("high");
    bench.measure(11);
    assertThat(bench.result().flags()).isEmpty();
    bench.pass(Duration.ofDays(7)).calibrate("mid").measure(11);
    assertThat(bench.result().flags()).containsExactly("slope-due");
    assertThat(bench.state().nextStep())
        .startsWith(
            "A full calibration is due: the slope has not been checked for longer than 168 h.")
        .endsWith("put the electrode into standard low, then: calibrate standard=low");
    bench.calibrate("low");
    assertThat(bench.state().nextStep()).endsWith("calibrate standard=mid");
    bench.calibrate("mid").measure(11);
    assertThat(bench.result().flags()).isEmpty();
  }

  @Test
  void aRestartRemembersWhenTheSlopeWasFitted() {
    Bench bench = Bench.of(SETUP).calibrate("low").calibrate("high").measure(11);
    Bench later = bench.restarted(SETUP, Duration.ofDays(6)).calibrate("mid").measure(11);
    assertThat(later.result().flags()).isEmpty();
    later = later.restarted(SETUP, Duration.ofDays(2)).calibrate("mid").measure(11);
    assertThat(later.result().flags()).containsExactly("slope-due");
  }
}
