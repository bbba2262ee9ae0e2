package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.stability.uncertainty.BudgetLine;

class TemperatureDifferenceTest {

  private static Bench calibrated(Setup setup, double celsius) {
    return Bench.of(setup)
        .calibrate("low", celsius)
        .calibrate("mid", celsius)
        .calibrate("high", celsius);
  }

  @ParameterizedTest
  @CsvSource({"20.1, 22.1", "20.1, 18.1", "22.3, 24.3", "25, 25"})
  void aSampleJustAsFarFromTheStandardsAsIsLetPassIsNotFlagged(double standards, double sample) {
    assertThat(calibrated(Setup.nitrate(), standards).measure(20, sample).result().flags())
        .isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"20.1, 22.2", "20.1, 18.0", "25, 5"})
  void aSampleFurtherFromThemIs(double standards, double sample) {
    assertThat(calibrated(Setup.nitrate(), standards).measure(20, sample).result().flags())
        .containsExactly("temperature-differs");
  }

  @Test
  void theStationFileSaysHowFar() {
    Setup wide = Setup.nitrate().with(Changes.temperatureWithin(5));
    assertThat(calibrated(wide, 20).measure(20, 25).result().flags()).isEmpty();
    assertThat(calibrated(wide, 20).measure(20, 25.1).result().flags())
        .containsExactly("temperature-differs");
  }

  @Test
  void whatIsNotKnownOfTheCompensationIsInTheBudget() {
    assertThat(sources(calibrated(Setup.nitrate(), 20).measure(20, 20)))
        .doesNotContain("temperature compensation");
    assertThat(sources(calibrated(Setup.nitrate(), 20).measure(20, 26)))
        .contains("temperature compensation");
  }

  private static List<String> sources(Bench bench) {
    return bench.result().budget().orElseThrow().stream().map(BudgetLine::source).toList();
  }
}
