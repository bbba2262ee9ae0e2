package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Result;

/** Check standards where a limit takes the place of a number. */
class CheckStandardTest {

  private static Result verified(String standard, double found) {
    Bench bench =
        Bench.of(Setup.nitrate().with(Changes.range(8, 50))).calibrate("low").calibrate("high");
    bench.tell("verify", standard);
    return bench.read(3, bench.millivolts(found)).result();
  }

  @Test
  void aStandardBelowTheRangeThatIsFoundThereIsNotOff() {
    Result result = verified("low", 5);
    assertThat(result.verification()).isEmpty();
    assertThat(result.flags()).containsExactly("below-range");
  }

  @Test
  void aStandardAboveTheRangeThatIsFoundThereIsNotOff() {
    Result result = verified("high", 99);
    assertThat(result.verification()).isEmpty();
    assertThat(result.flags()).containsExactly("above-range");
  }

  @Test
  void aStandardWithinTheRangeThatIsFoundBeyondItIsOff() {
    assertThat(verified("mid", 6).flags()).containsExactly("below-range", "check-off");
    assertThat(verified("mid", 60).flags()).containsExactly("above-range", "check-off");
    assertThat(verified("mid", 60).verification()).isPresent();
  }

  @Test
  void aStandardBelowTheRangeThatIsFoundAboveItIsOff() {
    assertThat(verified("low", 60).flags()).containsExactly("above-range", "check-off");
  }
}
