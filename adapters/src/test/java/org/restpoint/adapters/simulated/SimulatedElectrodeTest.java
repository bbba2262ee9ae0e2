package org.restpoint.adapters.simulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.stability.electrode.Nernst;
import org.restpoint.stability.reading.Reading;

class SimulatedElectrodeTest {

  private static final Instant T = Instant.parse("2026-04-02T14:03:00Z");
  private static final Duration TAU = Duration.ofSeconds(10);
  private static final ResponseModel FILM = new ResponseModel.FilmDiffusion(TAU);
  private static final Display FINE = new Display(1e-9, 1e-9);
  private static final Beaker WEAK = new Beaker(1e-4, 25.0);
  private static final Beaker STRONG = new Beaker(1e-2, 25.0);

  @Test
  void atRestThePotentialIsOffsetPlusSlopeTimesLogarithm() {
    Reading reading =
        new SimulatedElectrode(quiet(90.0, -1), STRONG, Swing.NONE, T).reading(T.plusSeconds(1));
    // 200 + 0.9 · (−59.159) · (−2), within the instrument's last digit.
    assertThat(reading.millivolts().getAsDouble()).isCloseTo(306.487, within(1e-3));
    assertThat(reading.celsius()).hasValue(25.0);
  }

  @ParameterizedTest
  @CsvSource({"0", "1", "5", "10", "33", "200"})
  void thePotentialComesToRestAsTheFilmRenews(long seconds) {
    SimulatedElectrode electrode = new SimulatedElectrode(quiet(100.0, -1), STRONG, Swing.NONE, T);
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
    SimulatedElectrode down = new SimulatedElectrode(quiet(100.0, -1), STRONG, Swing.NONE, T);
    SimulatedElectrode up = new SimulatedElectrode(quiet(100.0, -1), WEAK, Swing.NONE, T);
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
    SimulatedElectrode hasty = new SimulatedElectrode(quiet(100.0, -1), STRONG, Swing.NONE, T);
    hasty.immerse(T, WEAK);
    hasty.immerse(T, STRONG);
    assertThat(hasty.reading(T))
        .isEqualTo(new SimulatedElectrode(quiet(100.0, -1), STRONG, Swing.NONE, T).reading(T));
  }

  @Test
  void aTimeBeforeTheImmersionCountsAsTheImmersion() {
    SimulatedElectrode electrode = new SimulatedElectrode(quiet(100.0, -1), STRONG, Swing.NONE, T);
    electrode.immerse(T.minusSeconds(60), WEAK);
    assertThat(electrode.reading(T).millivolts())
        .isEqualTo(
            new SimulatedElectrode(quiet(100.0, -1), STRONG, Swing.NONE, T)
                .reading(T)
                .millivolts());
  }

  @Test
  void theSameSeedGivesTheSameNoiseOfTheStatedSize() {
    SimulatedElectrode one = new SimulatedElectrode(noisy(11), STRONG, Swing.NONE, T);
    SimulatedElectrode two = new SimulatedElectrode(noisy(11), STRONG, Swing.NONE, T);
    SimulatedElectrode other = new SimulatedElectrode(noisy(12), STRONG, Swing.NONE, T);
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
    ElectrodeTraits creeping =
        new ElectrodeTraits(100.0, 200.0, -1, FILM, Noise.NONE, 2.5, 1, FINE);
    SimulatedElectrode electrode = new SimulatedElectrode(creeping, STRONG, Swing.NONE, T);
    double before = electrode.reading(T).millivolts().getAsDouble();
    double after = electrode.reading(T.plus(Duration.ofHours(2))).millivolts().getAsDouble();
    assertThat(after - before).isCloseTo(5.0, within(2e-6));
  }

  @Test
  void theCorrelatedNoiseHasTheStatedSizeAndKeepsTheStatedPart() {
    ElectrodeTraits traits =
        new ElectrodeTraits(100, 0, -1, FILM, new Noise(0, 0.5, 0.8), 0, 11, FINE);
    SimulatedElectrode electrode = new SimulatedElectrode(traits, new Beaker(1, 25), Swing.NONE, T);
    double[] noise =
        IntStream.range(0, 20_000)
            .mapToDouble(i -> electrode.reading(T.plusSeconds(i)).millivolts().getAsDouble())
            .toArray();
    double squares = Arrays.stream(noise).map(x -> x * x).average().getAsDouble();
    double products =
        IntStream.range(1, noise.length)
            .mapToDouble(i -> noise[i] * noise[i - 1])
            .average()
            .getAsDouble();
    // A variance of n values of which each keeps 0.8 has the standard error √(2/n · 1.64/0.36), 2.1
    // %; φ itself √(0.36/n), 0.0042: five of each.
    assertThat(squares).isCloseTo(0.25, within(0.25 * 0.11));
    assertThat(products / squares).isCloseTo(0.8, within(0.021));
  }

  @Test
  void theSlopeFollowsTheTemperatureThatSwings() {
    Swing swing = new Swing(5, Duration.ofHours(24));
    SimulatedElectrode electrode = new SimulatedElectrode(quiet(100.0, -1), STRONG, swing, T);
    for (int hours : new int[] {0, 6, 12, 18, 30}) {
      double celsius = 25 + 5 * Math.sin(2 * Math.PI * hours / 24);
      Reading reading = electrode.reading(T.plus(Duration.ofHours(hours)));
      assertThat(reading.celsius().getAsDouble()).isCloseTo(celsius, within(1e-9));
      assertThat(reading.millivolts().getAsDouble())
          .isCloseTo(200 - 2 * Nernst.idealSlopeMillivoltsPerDecade(-1, celsius), within(1e-6));
    }
  }

  @Test
  void theInstrumentShowsItsStepsAlone() {
    ElectrodeTraits plain = ElectrodeTraits.of(97.3, 201.23, -1, TAU, 0.3, 5);
    SimulatedElectrode electrode =
        new SimulatedElectrode(plain, new Beaker(3.3e-3, 21.4678), Swing.NONE, T);
    for (int i = 0; i < 100; i++) {
      Reading reading = electrode.reading(T.plusSeconds(i));
      assertThat(Double.toString(reading.millivolts().getAsDouble())).matches("\\d+\\.\\d{1,2}");
      assertThat(reading.celsius()).hasValue(21.5);
    }
    assertThat(new Display(0.2, 0.5).millivolts(-187.317)).isEqualTo(-187.4);
    assertThat(new Display(0.2, 0.5).celsius(21.4678)).isEqualTo(21.5);
    assertThat(new Display(0.2, 0.5).millivolts(-0.01)).isEqualTo(0.0);
  }

  @Test
  void whatNoElectrodeIsLikeIsRefused() {
    assertThatThrownBy(() -> ElectrodeTraits.of(100, 0, 0, TAU, 0, 1))
        .hasMessage("an ion has a charge other than 0");
    assertThatThrownBy(() -> ElectrodeTraits.of(100, 0, 1, Duration.ZERO, 0, 1))
        .hasMessage("the time constant is not above 0");
    assertThatThrownBy(() -> ElectrodeTraits.of(100, 0, 1, TAU, -1, 1))
        .hasMessage("the noise is 0 or above and finite");
    assertThatThrownBy(() -> new Noise(0, 0, 1))
        .hasMessage("a correlation is from 0 to below 1: 1.0");
    assertThatThrownBy(() -> ElectrodeTraits.of(Double.NaN, 0, 1, TAU, 0, 1))
        .hasMessage("slope, offset and creep are finite numbers");
    assertThatThrownBy(() -> new Display(0.01, 0))
        .hasMessage("the steps of a display are above 0 and finite");
    assertThatThrownBy(() -> new Swing(51, TAU))
        .hasMessage("a temperature swings by 0 to 50 K: 51.0");
    assertThatThrownBy(() -> new Swing(1, Duration.ZERO))
        .hasMessage("the period of a swing is not above 0");
    assertThatThrownBy(() -> new Beaker(0, 25))
        .hasMessage("a concentration of 0.0 mol/L is not above 0 and finite");
    assertThatThrownBy(() -> new Beaker(1, -50.5))
        .hasMessage("a temperature of -50.5 °C is not from -50 to 150 °C");
  }

  private static ElectrodeTraits quiet(double slopePercent, int charge) {
    return new ElectrodeTraits(slopePercent, 200.0, charge, FILM, Noise.NONE, 0.0, 1, FINE);
  }

  private static ElectrodeTraits noisy(long seed) {
    return new ElectrodeTraits(100.0, 200.0, -1, FILM, Noise.white(0.5), 0.0, seed, FINE);
  }
}
