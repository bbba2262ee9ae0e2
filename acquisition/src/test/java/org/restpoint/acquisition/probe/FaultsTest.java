package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.restpoint.stability.calibration.Reason;

/** What is broken between electrode and meter is named in front of what it led to. */
class FaultsTest {

  private static Bench two(double low, double high) {
    return Bench.of(Setup.nitrate())
        .tell("calibrate", "low")
        .read(3, low)
        .tell("calibrate", "high")
        .read(3, high);
  }

  @Test
  void aReversedSlopeNamesItself() {
    assertThat(two(-230, -156).calibration().reasons())
        .extracting(Reason::code)
        .containsExactly("slope-reversed");
  }

  @Test
  void aDeadElectrodeIsNamed() {
    assertThat(two(120, 120.5).calibration().reasons())
        .extracting(Reason::code)
        .containsExactly("electrode-dead", "slope-none");
  }

  @Test
  void aShortedInputIsNamed() {
    assertThat(two(0.4, -0.2).calibration().reasons())
        .extracting(Reason::code)
        .containsExactly("input-shorted", "slope-none");
  }

  @Test
  void aStandardThatWandersByTensOfMillivoltsIsReadWithAnOpenInput() {
    Bench bench = Bench.of(Setup.nitrate()).tell("calibrate", "low");
    for (int i = 0; i < 61; i++) {
      bench.read(1, i % 2 == 0 ? 100 : 180);
    }
    assertThat(bench.calibration().reasons())
        .extracting(Reason::code)
        .containsExactly("unsettled", "input-open");
    assertThat(bench.calibration().reasons())
        .extracting(Reason::text)
        .allSatisfy(text -> assertThat(text).startsWith("standard low: "));
  }

  @Test
  void soIsASample() {
    Bench bench = Bench.of(Setup.nitrate()).calibrate("low").calibrate("high");
    bench.tell("{\"do\":\"measure\"}");
    for (int i = 0; i < 61; i++) {
      bench.read(1, i % 2 == 0 ? 100 : 180);
    }
    assertThat(bench.result().flags()).containsExactly("unsettled", "input-open");
    assertThat(bench.restless(1).tell("{\"do\":\"measure\"}").restless(61).result().flags())
        .containsExactly("unsettled");
  }
}
