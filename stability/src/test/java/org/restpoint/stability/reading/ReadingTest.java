package org.restpoint.stability.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ReadingTest {

  private static final Instant NOON = Instant.parse("2026-04-02T12:00:00.123Z");

  @Test
  void aReadingKeepsWhatArrived() {
    Reading both = Reading.of(NOON, -12.5, 21.5);
    assertThat(both.millivolts()).hasValue(-12.5);
    assertThat(both.celsius()).hasValue(21.5);
    assertThat(Reading.ofMillivolts(NOON, 3).celsius()).isEmpty();
    assertThat(new Reading(NOON, OptionalDouble.empty(), OptionalDouble.of(4)).millivolts())
        .isEmpty();
  }

  @Test
  void aReadingOfNothingIsRefused() {
    assertThatThrownBy(() -> new Reading(NOON, OptionalDouble.empty(), OptionalDouble.empty()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a reading needs a potential or a temperature");
  }

  @Test
  void aPotentialThatIsNoNumberIsRefused() {
    for (double value : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> Reading.ofMillivolts(NOON, value))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("the potential is not a finite number");
    }
  }

  @Test
  void aTemperatureNotAboveAbsoluteZeroIsRefused() {
    for (double value : new double[] {-273.15, -1000, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> Reading.of(NOON, 1, value))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("the temperature is not a number above absolute zero");
    }
    assertThat(Reading.of(NOON, 1, -273.1).celsius()).hasValue(-273.1);
  }

  @Test
  void aTimeFinerThanARecordingKeepsIsRefused() {
    assertThatThrownBy(() -> Reading.ofMillivolts(NOON.plusNanos(1), 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the time of a reading is finer than a millisecond");
  }
}
