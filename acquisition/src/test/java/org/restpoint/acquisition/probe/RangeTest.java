package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Amount;

/** Between which values a number is told, and what is told beyond them. */
class RangeTest {

  /** Rounding in some twenty operations. */
  private static final double ROUNDING = 1e-9;

  private static Bench calibrated() {
    return Bench.of(Setup.nitrate().with(Changes.range(8, 50))).calibrate("low").calibrate("high");
  }

  private static Amount amount(Result result) {
    return result.concentration().orElseThrow();
  }

  @Test
  void withinTheRangeANumberIsTold() {
    for (double value : new double[] {8.0001, 20, 49.9999}) {
      Result result = calibrated().measure(value).result();
      assertThat(amount(result).relation()).isEqualTo("=");
      assertThat(amount(result).value()).isCloseTo(value, within(value * ROUNDING));
      assertThat(result.flags()).isEmpty();
    }
  }

  @Test
  void belowTheRangeItIsLessThanItsLowerEnd() {
    Result result = calibrated().measure(7.999).result();
    assertThat(amount(result).relation()).isEqualTo("<");
    assertThat(amount(result).value()).isEqualTo(8);
    assertThat(result.flags()).containsExactly("below-range");
    assertThat(result.quality()).isEqualTo(3);
    assertThat(result.reported().orElseThrow().relation()).isEqualTo("<");
  }

  @Test
  void aboveTheRangeItIsMoreThanItsUpperEnd() {
    Result result = calibrated().measure(50.001).result();
    assertThat(amount(result).relation()).isEqualTo(">");
    assertThat(amount(result).value()).isEqualTo(50);
    assertThat(result.flags()).containsExactly("above-range");
  }

  @Test
  void aLimitHasTheUncertaintyThatASampleAtTheLimitHas() {
    Amount less = amount(calibrated().measure(1).result());
    Amount more = amount(calibrated().measure(500).result());
    Bench free = Bench.of(Setup.nitrate()).calibrate("low").calibrate("high");
    assertThat(less.uncertainty())
        .isCloseTo(amount(free.measure(8).result()).uncertainty(), within(1e-6));
    assertThat(more.uncertainty())
        .isCloseTo(amount(free.measure(50).result()).uncertainty(), within(1e-6));
  }

  @Test
  void aPhHasARangeToo() {
    Bench bench = Bench.of(Changes.ph("phthalate", "borax").with(Changes.range(5, 8)));
    bench.calibrate("phthalate").calibrate("borax");
    assertThat(amount(bench.measure(6.5).result()).relation()).isEqualTo("=");
    assertThat(amount(bench.measure(4.9).result()).relation()).isEqualTo("<");
    assertThat(amount(bench.result()).value()).isEqualTo(5);
    assertThat(bench.result().flags()).containsExactly("below-range");
    assertThat(amount(bench.measure(8.1).result()).relation()).isEqualTo(">");
    assertThat(amount(bench.result()).value()).isEqualTo(8);
    assertThat(bench.result().flags()).containsExactly("above-range");
  }
}
