package org.restpoint.stability.activity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

/** How γ behaves for any ion, strength and temperature. */
class ActivityPropertyTest {

  @Provide
  Arbitrary<ActivityModel> models() {
    return Arbitraries.of(new ExtendedDebyeHueckel(), new Davies());
  }

  @Provide
  Arbitrary<Ion> ions() {
    return Combinators.combine(
            Arbitraries.of(-4, -3, -2, -1, 1, 2, 3, 4), Arbitraries.doubles().between(200, 1100))
        .as((charge, size) -> new Ion("any", charge, size));
  }

  @Property
  void theCoefficientFallsAsTheStrengthRises(
      @ForAll("ions") Ion ion,
      @ForAll @DoubleRange(min = 1e-6, max = 0.1) @Scale(8) double strength,
      @ForAll @DoubleRange(min = 1.01, max = 10) double ratio,
      @ForAll @DoubleRange(min = 0, max = 60) double celsius) {
    ActivityModel model = new ExtendedDebyeHueckel();
    assertThat(model.coefficient(ion, strength * ratio, celsius).value())
        .isLessThan(model.coefficient(ion, strength, celsius).value());
  }

  @Property
  void itIsBelowOneAndSmallerForHotterWaterWhereTheModelHolds(
      @ForAll("models") ActivityModel model,
      @ForAll("ions") Ion ion,
      @ForAll @DoubleRange(min = 1e-6, max = 0.1) @Scale(8) double strength,
      @ForAll @DoubleRange(min = 0, max = 59) double celsius) {
    double cooler = model.coefficient(ion, strength, celsius).value();
    assertThat(cooler).isLessThan(1);
    assertThat(model.coefficient(ion, strength, celsius + 1).value()).isLessThan(cooler);
  }

  @Property
  void theSignOfTheChargeDoesNotMatter(
      @ForAll("models") ActivityModel model,
      @ForAll("ions") Ion ion,
      @ForAll @DoubleRange(min = 0, max = 1) @Scale(8) double strength,
      @ForAll @DoubleRange(min = 0, max = 1) double doubt,
      @ForAll @DoubleRange(min = 0, max = 60) double celsius) {
    Ion other = new Ion(ion.name(), -ion.charge(), ion.sizePicometres());
    assertThat(model.coefficient(other, strength, doubt, celsius))
        .isEqualTo(model.coefficient(ion, strength, doubt, celsius));
  }

  @Property
  void theLogarithmGoesWithTheSquareOfTheCharge(
      @ForAll("models") ActivityModel model,
      @ForAll("ions") Ion ion,
      @ForAll @DoubleRange(min = 0, max = 0.5) @Scale(8) double strength,
      @ForAll @DoubleRange(min = 0, max = 60) double celsius) {
    DebyeHueckelConstants constants = DebyeHueckelConstants.at(celsius);
    Ion single = new Ion(ion.name(), 1, ion.sizePicometres());
    assertThat(model.naturalLogarithm(ion, strength, constants))
        .isCloseTo(
            ion.charge() * ion.charge() * model.naturalLogarithm(single, strength, constants),
            within(1e-12));
  }

  @Property
  void itTendsToOneAlongTheLimitingLaw(
      @ForAll("models") ActivityModel model,
      @ForAll("ions") Ion ion,
      @ForAll @DoubleRange(min = 1e-12, max = 1e-8) @Scale(14) double strength,
      @ForAll @DoubleRange(min = 0, max = 60) double celsius) {
    double limit =
        -Math.log(10)
            * DebyeHueckelConstants.at(celsius).a()
            * ion.charge()
            * ion.charge()
            * Math.sqrt(strength);
    // The next term is at most B·å·√I ≤ 4·√I of it.
    assertThat(Math.log(model.coefficient(ion, strength, celsius).value()))
        .isCloseTo(limit, within(4 * Math.sqrt(strength) * Math.abs(limit) + 1e-15));
  }

  @Property
  void theSensitivityIsTheSlopeOfTheLogarithm(
      @ForAll("models") ActivityModel model,
      @ForAll("ions") Ion ion,
      @ForAll @DoubleRange(min = 1e-6, max = 2) @Scale(8) double strength,
      @ForAll @DoubleRange(min = 0, max = 60) double celsius) {
    DebyeHueckelConstants constants = DebyeHueckelConstants.at(celsius);
    double step = 1e-4;
    double slope =
        (model.naturalLogarithm(ion, strength * Math.exp(step), constants)
                - model.naturalLogarithm(ion, strength * Math.exp(-step), constants))
            / (2 * step);
    // The third derivative of at most about 30 times step²/6, and rounding over the step.
    assertThat(model.sensitivity(ion, strength, constants)).isCloseTo(slope, within(1e-6));
  }
}
