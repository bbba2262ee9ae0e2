package org.restpoint.stability.thermometer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.restpoint.stability.electrode.Nernst;
import org.restpoint.stability.thermometer.ThermometerReading.Celsius;
import org.restpoint.stability.thermometer.ThermometerReading.OutOfRange;

/** There and back again, for any thermometer, over the whole of its range. */
class ThermometerPropertyTest {

  /** A thermometer and how much of its range lies below a temperature. */
  record Case(ResistanceThermometer thermometer, double lowest, double highest) {

    double celsius(double share) {
      return Math.min(highest, lowest + share * (highest - lowest));
    }
  }

  @Provide
  Arbitrary<Case> thermometers() {
    return Arbitraries.oneOf(platinum(), betas(), steinhartHarts());
  }

  private static Arbitrary<Case> platinum() {
    return Arbitraries.doubles().between(10, 10000).map(r -> new Case(new Platinum(r), -200, 850));
  }

  private static Arbitrary<Case> betas() {
    return Combinators.combine(
            Arbitraries.doubles().between(100, 1e6),
            Arbitraries.doubles().between(0, 100),
            Arbitraries.doubles().between(2000, 5500))
        .as((r, t, beta) -> new Case(new Beta(r, t, beta), -50, 150));
  }

  private static Arbitrary<Case> steinhartHarts() {
    return Combinators.combine(
            Arbitraries.doubles().between(5e-4, 1.5e-3).ofScale(8),
            Arbitraries.doubles().between(1.8e-4, 3.2e-4).ofScale(10),
            Arbitraries.doubles().between(-5e-8, 4e-7).ofScale(14))
        .as((a, b, c) -> new Case(new SteinhartHart(a, b, c), -50, 150));
  }

  @Property
  void anyTemperatureComesBack(
      @ForAll("thermometers") Case any,
      @ForAll @DoubleRange(min = 0, max = 1) @Scale(8) double share) {
    double celsius = any.celsius(share);
    assertThat(Readings.read(any.thermometer(), any.thermometer().ohms(celsius)).value())
        .isCloseTo(celsius, within(1e-6));
  }

  @Property
  void aRootFinderAgrees(
      @ForAll("thermometers") Case any,
      @ForAll @DoubleRange(min = 0, max = 1) @Scale(8) double share) {
    ResistanceThermometer thermometer = any.thermometer();
    double cold = thermometer.ohms(any.lowest());
    double hot = thermometer.ohms(any.highest());
    double ohms = cold * Math.pow(hot / cold, share * 0.999 + 0.0005);
    assertThat(Readings.read(thermometer, ohms).value())
        .isCloseTo(Readings.solved(thermometer, ohms, any.lowest(), any.highest()), within(1e-6));
  }

  @Property
  void resistanceOnlyRisesInPlatinumAndOnlyFallsInThermistors(
      @ForAll("thermometers") Case any,
      @ForAll @DoubleRange(min = 0, max = 1) @Scale(8) double one,
      @ForAll @DoubleRange(min = 0, max = 1) @Scale(8) double other) {
    double cold = any.celsius(Math.min(one, other));
    double warm = any.celsius(Math.max(one, other));
    Assume.that(warm - cold > 1e-6);
    double difference = any.thermometer().ohms(warm) - any.thermometer().ohms(cold);
    assertThat(any.thermometer() instanceof Platinum ? difference : -difference).isPositive();
  }

  @Property
  void theSlopeIsThatOfTheCurve(
      @ForAll("thermometers") Case any,
      @ForAll @DoubleRange(min = 0.001, max = 0.999) @Scale(8) double share) {
    double celsius = any.celsius(share);
    // Two sides of 0 °C have two third derivatives in platinum: not across.
    Assume.that(Math.abs(celsius) > 0.002);
    ResistanceThermometer thermometer = any.thermometer();
    double ohms = thermometer.ohms(celsius);
    double ohmsPerKelvin =
        (thermometer.ohms(celsius + 0.001) - thermometer.ohms(celsius - 0.001)) / 0.002;
    // (0.001 K)² of a third derivative, and rounding over 0.002 K.
    assertThat(Readings.read(thermometer, ohms).kelvinPerOhm() * ohmsPerKelvin)
        .isCloseTo(1, within(1e-6));
  }

  @Property
  void anyDoubleIsATemperatureOfTheRangeOrHasAReason(
      @ForAll("thermometers") Case any, @ForAll double ohms) {
    ThermometerReading reading = any.thermometer().celsius(ohms);
    if (reading instanceof Celsius temperature) {
      assertThat(temperature.value()).isBetween(any.lowest(), any.highest());
      assertThat(temperature.kelvinPerOhm()).isFinite().isNotZero();
    } else {
      assertThat(((OutOfRange) reading).reason().code()).startsWith("thermometer-");
    }
  }

  @Property
  void threePointsOfAThermistorAreOnTheCurveThroughThem(
      @ForAll @DoubleRange(min = 1000, max = 100000) @Scale(8) double ohms,
      @ForAll @DoubleRange(min = 3000, max = 4500) @Scale(8) double beta,
      @ForAll @DoubleRange(min = -0.05, max = 0.05) @Scale(8) double kelvinOff) {
    Beta straight = new Beta(ohms, 25, beta);
    // A real thermistor is a little off the straight line.
    ThermistorPoint[] points = {
      new ThermistorPoint(straight.ohms(0), 0),
      new ThermistorPoint(straight.ohms(25), 25 + kelvinOff),
      new ThermistorPoint(straight.ohms(50), 50)
    };
    SteinhartHart curve = SteinhartHart.through(points[0], points[1], points[2]);
    for (ThermistorPoint point : points) {
      assertThat(Readings.read(curve, point.ohms()).value())
          .isCloseTo(point.celsius(), within(1e-9));
    }
    SteinhartHart otherOrder = SteinhartHart.through(points[2], points[0], points[1]);
    assertThat(otherOrder.ohms(37)).isCloseTo(curve.ohms(37), within(1e-8 * curve.ohms(37)));
  }

  @Property
  void betaAndSteinhartHartWithoutACubicTermAreTheSame(
      @ForAll @DoubleRange(min = 100, max = 100000) @Scale(8) double ohms,
      @ForAll @DoubleRange(min = 0, max = 50) @Scale(8) double reference,
      @ForAll @DoubleRange(min = 2500, max = 5000) @Scale(8) double beta,
      @ForAll @DoubleRange(min = -50, max = 150) @Scale(8) double celsius) {
    Beta two = new Beta(ohms, reference, beta);
    SteinhartHart three =
        new SteinhartHart(1 / Nernst.kelvin(reference) - Math.log(ohms) / beta, 1 / beta, 0);
    assertThat(Readings.read(two, ohms).value()).isCloseTo(reference, within(1e-9));
    assertThat(Readings.read(three, ohms).value()).isCloseTo(reference, within(1e-9));
    assertThat(three.ohms(celsius)).isCloseTo(two.ohms(celsius), within(1e-9 * two.ohms(celsius)));
  }
}
