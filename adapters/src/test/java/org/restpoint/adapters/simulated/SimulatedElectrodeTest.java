package org.restpoint.adapters.simulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.DoubleSummaryStatistics;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.stability.electrode.Nernst;
import org.restpoint.stability.reading.Reading;

class SimulatedElectrodeTest {

  private static final Instant T = Instant.parse("2026-04-02T14:03:00Z");
  private static final Duration TAU = Duration.ofSeconds(10);
  private static final Beaker WEAK = new Beaker(1e-4, 25.0);
  private static final Beaker STRONG = new Beaker(1e-2, 25.0);

  @Test
  void atRestThePotentialIsOffsetPlusSlopeTimesLogarithm() {
    Reading reading = new SimulatedElectrode(quiet(90.0, -1), STRONG, T).reading(T.plusSeconds(1));
    // 200 + 0.9 · (−59.159) · (−2), within the instrument's last digit.
    assertThat(reading.millivolts().getAsDouble()).isCloseTo(306.487, within(1e-3));
    assertThat(reading.celsius()).hasValue(25.0);
  }

  @ParameterizedTest
  @CsvSource({"0", "1", "5", "10", "33", "200"})
  void thePotentialComesToRestAsTheFilmRenews(long seconds) {
    SimulatedElectrode electrode = new SimulatedElectrode(quiet(100.0, -1), STRONG, T);
    electrode.immerse(T, WEAK);
    double slope = Nernst.idealSlopeMillivoltsPerDecade(-1, 25.0);
    double atRest = 200 + slope * Math.log10(1e-4);
    double published =
        atRest + slope * Math.log10(1 - (1 - 1e-2 / 1e-4) * Math.exp(-seconds / 10.0));
    assertThat(electrode.reading(T.plusSeconds(seconds)).millivolts().getAsDouble())
        .isCloseTo(published, within(1e-6));
  }

  @Test
  void comingFromTheStrongerSolutionTakesLonger() {
    SimulatedElectrode down = new SimulatedElectrode(quiet(100.0, -1), STRONG, T);
    SimulatedElectrode up = new SimulatedElectrode(quiet(100.0, -1), WEAK, T);
    down.immerse(T, WEAK);
    up.immerse(T, STRONG);
    double slope = Nernst.idealSlopeMillivoltsPerDecade(-1, 25.0);
    Instant later = T.plusSeconds(30);
    assertThat(down.reading(later).millivolts().getAsDouble()).isLessThan(200 + slope * -4 - 10);
    assertThat(up.reading(later).millivolts().getAsDouble())
        .isCloseTo(200 + slope * -2, within(2.0));
  }

  @Test
  void aSolutionLeftTooSoonIsCarriedOverIntoTheNext() {
    SimulatedElectrode hasty = new SimulatedElectrode(quiet(100.0, -1), STRONG, T);
    hasty.immerse(T, WEAK);
    hasty.immerse(T, STRONG);
    assertThat(hasty.reading(T))
        .isEqualTo(new SimulatedElectrode(quiet(100.0, -1), STRONG, T).reading(T));
  }

  @Test
  void aTimeBeforeTheImmersionCountsAsTheImmersion() {
    SimulatedElectrode electrode = new SimulatedElectrode(quiet(100.0, -1), STRONG, T);
    electrode.immerse(T.minusSeconds(60), WEAK);
    assertThat(electrode.reading(T).millivolts())
        .isEqualTo(new SimulatedElectrode(quiet(100.0, -1), STRONG, T).reading(T).millivolts());
  }

  @Test
  void theSameSeedGivesTheSameNoiseOfTheStatedSize() {
    SimulatedElectrode one = new SimulatedElectrode(noisy(11), STRONG, T);
    SimulatedElectrode two = new SimulatedElectrode(noisy(11), STRONG, T);
    SimulatedElectrode other = new SimulatedElectrode(noisy(12), STRONG, T);
    double atRest = 200 + Nernst.idealSlopeMillivoltsPerDecade(-1, 25.0) * -2;
    DoubleSummaryStatistics squares = new DoubleSummaryStatistics();
    int differing = 0;
    for (int i = 0; i < 10_000; i++) {
      Instant time = T.plusSeconds(i);
      Reading reading = one.reading(time);
      assertThat(two.reading(time)).isEqualTo(reading);
      differing += other.reading(time).equals(reading) ? 0 : 1;
      double deviation = reading.millivolts().getAsDouble() - atRest;
      squares.accept(deviation * deviation);
    }
    assertThat(differing).isGreaterThan(9_000);
    // 0.5 mV; the standard error of a standard deviation of 10,000 values is 0.7 %: five of them.
    assertThat(Math.sqrt(squares.getAverage())).isCloseTo(0.5, within(0.018));
  }

  @Test
  void theOffsetCreeps() {
    ElectrodeTraits creeping = new ElectrodeTraits(100.0, 200.0, -1, TAU, 0.0, 2.5, 1, 6, 1);
    SimulatedElectrode electrode = new SimulatedElectrode(creeping, STRONG, T);
    double before = electrode.reading(T).millivolts().getAsDouble();
    double after = electrode.reading(T.plus(Duration.ofHours(2))).millivolts().getAsDouble();
    assertThat(after - before).isCloseTo(5.0, within(2e-6));
  }

  @Test
  void theInstrumentShowsItsDecimalsAlone() {
    ElectrodeTraits plain = ElectrodeTraits.of(97.3, 201.23, -1, TAU, 0.3, 5);
    SimulatedElectrode electrode = new SimulatedElectrode(plain, new Beaker(3.3e-3, 21.4678), T);
    for (int i = 0; i < 100; i++) {
      Reading reading = electrode.reading(T.plusSeconds(i));
      assertThat(Double.toString(reading.millivolts().getAsDouble())).matches("\\d+\\.\\d{1,2}");
      assertThat(reading.celsius()).hasValue(21.5);
    }
  }

  @Test
  void whatNoElectrodeIsLikeIsRefused() {
    assertThatThrownBy(() -> ElectrodeTraits.of(100, 0, 0, TAU, 0, 1))
        .hasMessage("an ion has a charge other than 0");
    assertThatThrownBy(() -> ElectrodeTraits.of(100, 0, 1, Duration.ZERO, 0, 1))
        .hasMessage("the time constant is not above 0");
    assertThatThrownBy(() -> ElectrodeTraits.of(100, 0, 1, TAU, -1, 1))
        .hasMessage("the noise is 0 or above and finite");
    assertThatThrownBy(() -> ElectrodeTraits.of(Double.NaN, 0, 1, TAU, 0, 1))
        .hasMessage("slope, offset and creep are finite numbers");
    assertThatThrownBy(() -> new ElectrodeTraits(100, 0, 1, TAU, 0, 0, 1, 7, 1))
        .hasMessage("decimals are 0 to 6");
    assertThatThrownBy(() -> new Beaker(0, 25))
        .hasMessage("a concentration of 0.0 mol/L is not above 0 and finite");
    assertThatThrownBy(() -> new Beaker(1, -273.15))
        .hasMessage("a temperature of -273.15 °C is not above absolute zero and finite");
  }

  private static ElectrodeTraits quiet(double slopePercent, int charge) {
    return new ElectrodeTraits(slopePercent, 200.0, charge, TAU, 0.0, 0.0, 1, 6, 1);
  }

  private static ElectrodeTraits noisy(long seed) {
    return new ElectrodeTraits(100.0, 200.0, -1, TAU, 0.5, 0.0, seed, 6, 1);
  }
}
