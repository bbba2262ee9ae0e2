package org.restpoint.adapters.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.restpoint.adapters.quantity.Parsed.Rejected;
import org.restpoint.adapters.quantity.Parsed.Values;
import org.restpoint.stability.thermometer.Platinum;

class MeaningTest {

  private static final OptionalDouble NONE = OptionalDouble.empty();

  private static Meaning potential(PotentialScale scale) {
    return new Meaning(Optional.of(scale), Optional.empty());
  }

  private static Meaning temperature(TemperatureScale scale) {
    return new Meaning(Optional.empty(), Optional.of(scale));
  }

  private static double millivolts(PotentialScale scale, double number) {
    return ((Values) potential(scale).parsed(OptionalDouble.of(number), NONE))
        .millivolts()
        .orElseThrow();
  }

  private static double celsius(TemperatureScale scale, double number) {
    return ((Values) temperature(scale).parsed(NONE, OptionalDouble.of(number)))
        .celsius()
        .orElseThrow();
  }

  @Test
  void potentialsComeInMillivoltsVoltsMicrovoltsAndCounts() {
    assertThat(millivolts(PotentialScale.MILLIVOLTS, -12.34)).isEqualTo(-12.34);
    assertThat(millivolts(PotentialScale.VOLTS, 0.1874)).isCloseTo(187.4, within(1e-10));
    assertThat(millivolts(PotentialScale.MICROVOLTS, -59_160)).isCloseTo(-59.16, within(1e-10));
    assertThat(millivolts(PotentialScale.counts(0.0625, -2048), 33_000)).isEqualTo(14.5);
  }

  @Test
  void temperaturesComeInCelsiusKelvinFahrenheitAndOhms() {
    assertThat(celsius(TemperatureScale.CELSIUS, 25.1)).isEqualTo(25.1);
    assertThat(celsius(TemperatureScale.KELVIN, 298.15)).isCloseTo(25, within(1e-10));
    assertThat(celsius(TemperatureScale.FAHRENHEIT, 77)).isCloseTo(25, within(1e-10));
    // IEC 60751:2022, table of a Pt100: 109.73 ohm at 25 degrees Celsius, rounded to 0.013 K.
    assertThat(celsius(new TemperatureScale.Ohms(new Platinum(100)), 109.73))
        .isCloseTo(25, within(0.013));
  }

  @Test
  void anElectrodeNeedsItsPotentialAndMayLackItsTemperature() {
    Meaning both = Meanings.MILLIVOLTS_AND_CELSIUS;

    assertThat(both.parsed(OptionalDouble.of(1.5), NONE))
        .isEqualTo(new Values(OptionalDouble.of(1.5), NONE));
    assertThat(both.parsed(NONE, OptionalDouble.of(25)))
        .isEqualTo(new Rejected("there is no millivolts"));
    assertThat(Meanings.CELSIUS.parsed(OptionalDouble.of(1.5), NONE))
        .isEqualTo(new Rejected("there is no celsius"));
  }

  @Test
  void whatIsNotBelievedIsToldInMillivoltsAndDegrees() {
    assertThat(potential(PotentialScale.VOLTS).parsed(OptionalDouble.of(-10.001), NONE))
        .isEqualTo(new Rejected("-10001 mV is outside -10000 to 10000 mV"));
    assertThat(temperature(TemperatureScale.KELVIN).parsed(NONE, OptionalDouble.of(25)))
        .isEqualTo(new Rejected("-248.15 Cel is outside -30 to 130 Cel"));
    assertThat(Meanings.MILLIVOLTS.parsed(OptionalDouble.of(Double.NaN), NONE))
        .isEqualTo(new Rejected("NaN mV is outside -10000 to 10000 mV"));
  }

  @Test
  void aBrokenThermometerSaysThatItIsBroken() {
    Meaning platinum = temperature(new TemperatureScale.Ohms(new Platinum(100)));

    assertThat(platinum.parsed(NONE, OptionalDouble.of(1e7)))
        .isInstanceOfSatisfying(
            Rejected.class, rejected -> assertThat(rejected.reason()).contains("open"));
  }

  @Test
  void aScaleThatTurnsEverythingIntoOneValueIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> PotentialScale.counts(0, 1));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PotentialScale.counts(1, Double.POSITIVE_INFINITY));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new TemperatureScale.Straight("celsius", 0, 1));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Meaning(Optional.empty(), Optional.empty()));
  }
}
