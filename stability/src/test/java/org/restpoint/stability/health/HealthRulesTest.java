package org.restpoint.stability.health;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.health.Assessment.Drifting;
import org.restpoint.stability.health.Assessment.Jumped;
import org.restpoint.stability.health.Assessment.NotEnoughHistory;
import org.restpoint.stability.health.Assessment.Steady;

/** Histories are invented: one observation a day. */
class HealthRulesTest {

  private static final HealthRules RULES = HealthRules.USUAL;
  private static final Instant BEGINNING = Instant.parse("2026-03-01T08:00:00Z");
  private static final HealthLimits SLOPE =
      new HealthLimits(OptionalDouble.of(90), OptionalDouble.of(103));

  private static Series daily(Quantity quantity, int days, IntToDoubleFunction value) {
    List<Observation> observations = new ArrayList<>();
    for (int day = 0; day < days; day++) {
      observations.add(
          new Observation(
              BEGINNING.plus(Duration.ofDays(day)), quantity, "mid", value.applyAsDouble(day), 0));
    }
    return new Series(observations, 0);
  }

  private static Series slopes(int days, IntToDoubleFunction value) {
    return daily(Quantity.SLOPE_PERCENT, days, value);
  }

  private static IntToDoubleFunction noisy(double from, double perDay, double noise) {
    Random random = new Random(11);
    return day -> from + perDay * day + noise * random.nextGaussian();
  }

  @Test
  void aFewObservationsAreNotEnough() {
    Assessment assessment = RULES.assess(slopes(9, day -> 98), SLOPE);
    assertThat(assessment).isEqualTo(new NotEnoughHistory(9, 10));
    assertThat(assessment.reason().orElseThrow().text())
        .isEqualTo("9 observations are there, at least 10, at different times, are needed");
  }

  @Test
  void observationsAtOneTimeAreNotEnoughHoweverMany() {
    List<Observation> once = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      once.add(new Observation(BEGINNING, Quantity.SLOPE_PERCENT, "mid", 98 + 0.01 * i, 0));
    }
    assertThat(RULES.assess(new Series(once, 0), SLOPE)).isEqualTo(new NotEnoughHistory(30, 10));
  }

  @Test
  void anElectrodeThatStaysAsItIsIsSteady() {
    Assessment assessment = RULES.assess(slopes(60, noisy(98, 0, 0.5)), SLOPE);
    assertThat(assessment).isInstanceOf(Steady.class);
    assertThat(assessment.reason()).isEmpty();
    assertThat(((Steady) assessment).base().median()).isCloseTo(98, within(0.5));
    assertThat(RULES.assess(slopes(60, day -> 98), SLOPE)).isInstanceOf(Steady.class);
  }

  @Test
  void aSlopeThatFallsIsToldWithTheDayItComesToItsLimit() {
    Assessment assessment = RULES.assess(slopes(41, noisy(99, -0.1, 0.2)), SLOPE);
    assertThat(assessment).isInstanceOf(Drifting.class);
    Drifting drifting = (Drifting) assessment;
    assertThat(drifting.trend().perDay()).isCloseTo(-0.1, within(0.01));
    assertThat(drifting.trend().lowPerDay()).isLessThan(-0.1);
    assertThat(drifting.trend().highPerDay()).isGreaterThan(-0.1);
    Projection.On on = (Projection.On) drifting.projection();
    // 99 − 0.1·90 = 90: day 90, which is the 30th of May; a tenth of 50 days for the slope.
    Instant expected = BEGINNING.plus(Duration.ofDays(90));
    assertThat(on.time())
        .isBetween(expected.minus(Duration.ofDays(5)), expected.plus(Duration.ofDays(5)));
    assertThat(on.earliest()).isBefore(on.time());
    assertThat(on.latest().orElseThrow()).isAfter(on.time());
  }

  @Test
  void aDriftWithoutNoiseIsToldToTheDay() {
    Assessment assessment = RULES.assess(slopes(41, day -> 99 - 0.125 * day), SLOPE);
    assertThat(assessment.reason().orElseThrow().code()).isEqualTo("health-drifting");
    assertThat(assessment.reason().orElseThrow().text())
        .isEqualTo(
            "the slope changes by -0.125 % a day (-0.125 to -0.125, over 41 observations): 97.81 %"
                + " at first, 94.00 % now; if it goes on, it is at 90.0 % on 2026-05-12"
                + " (2026-05-12 at the earliest)");
    assertThat(assessment.reason().orElseThrow().remedy())
        .startsWith("Soak or clean the electrode; have a new membrane at hand");
  }

  @Test
  void aDriftThatHasComeToItsLimitSaysSo() {
    Assessment assessment = RULES.assess(slopes(41, day -> 93 - 0.125 * day), SLOPE);
    assertThat(((Drifting) assessment).projection()).isEqualTo(new Projection.Reached());
    assertThat(assessment.reason().orElseThrow().text())
        .endsWith("it has come to its limit of 90.0 %");
  }

  @Test
  void aDriftWithNoLimitAheadLeadsNowhereInSight() {
    Series rising = daily(Quantity.RESPONSE_SECONDS, 41, day -> 40 + day);
    Assessment without = RULES.assess(rising, HealthLimits.none());
    assertThat(((Drifting) without).projection()).isEqualTo(new Projection.NotInSight());
    assertThat(without.reason().orElseThrow().text())
        .isEqualTo(
            "the response time in mid changes by 1.00 s a day (1.00 to 1.00, over 41 observations):"
                + " 49.50 s at first, 80.00 s now");
    Assessment faint = RULES.assess(slopes(41, day -> 98 - 1e-4 * day), SLOPE);
    assertThat(((Drifting) faint).projection()).isEqualTo(new Projection.NotInSight());
  }

  @Test
  void aValueOutOfTheWayOfThoseBeforeItIsAJump() {
    Series series =
        daily(Quantity.OFFSET_MILLIVOLTS, 30, day -> day == 29 ? 225 : 210 + 0.5 * (day % 3));
    Assessment assessment = RULES.assess(series, HealthLimits.none());
    assertThat(assessment).isInstanceOf(Jumped.class);
    assertThat(assessment.reason().orElseThrow().text())
        .isEqualTo(
            "the offset in mid is 225.0 mV where 210.5 mV was to be expected, 19.6 deviations away");
    assertThat(assessment.reason().orElseThrow().remedy())
        .startsWith("Read the standard again in a fresh portion.");
  }

  @Test
  void aJumpIsToldFromTheTrendItLeaves() {
    Series on = slopes(40, day -> 99 - 0.1 * day);
    Series off = slopes(40, day -> day == 39 ? 99 : 99 - 0.1 * day);
    assertThat(RULES.assess(on, SLOPE)).isInstanceOf(Drifting.class);
    Assessment jumped = RULES.assess(off, SLOPE);
    assertThat(jumped).isInstanceOf(Jumped.class);
    assertThat(((Jumped) jumped).expected()).isCloseTo(95.1, within(1e-9));
    assertThat(((Jumped) jumped).deviations()).isCloseTo(39, within(1e-6));
  }

  @Test
  void anUncertainValueOrALastDigitIsNoJump() {
    Series steady = daily(Quantity.OFFSET_MILLIVOLTS, 30, day -> 210);
    Instant next = BEGINNING.plus(Duration.ofDays(30));
    Observation uncertain = new Observation(next, Quantity.OFFSET_MILLIVOLTS, "mid", 225, 4);
    Observation digit = new Observation(next, Quantity.OFFSET_MILLIVOLTS, "mid", 210.4, 0);
    assertThat(RULES.assess(steady.accept(uncertain), HealthLimits.none()))
        .isInstanceOf(Steady.class);
    assertThat(RULES.assess(steady.accept(digit), HealthLimits.none())).isInstanceOf(Steady.class);
  }

  @Test
  void aStepThatLastsBecomesADrift() {
    Assessment assessment = RULES.assess(slopes(40, day -> day < 20 ? 98 : 94), SLOPE);
    assertThat(assessment).isInstanceOf(Drifting.class);
  }

  /** 3000 steady electrodes of n days: a trend in 1 %, and a jump seldom even with ten days. */
  @Test
  void aSteadyElectrodeIsSeldomCalledOtherwise() {
    Random random = new Random(17);
    int draws = 3000;
    for (int days : new int[] {11, 40}) {
      int drifting = 0;
      int jumped = 0;
      for (int draw = 0; draw < draws; draw++) {
        Assessment assessment =
            RULES.assess(slopes(days, day -> 98 + random.nextGaussian()), SLOPE);
        drifting += assessment instanceof Drifting ? 1 : 0;
        jumped += assessment instanceof Jumped ? 1 : 0;
      }
      // 1 % with four standard errors; below 1 % since few points take few values of p.
      assertThat((double) drifting / draws).isBetween(0.001, 0.018);
      // Beyond five deviations: 1.0 % with ten before it, 0.1 % with twenty; four standard errors.
      assertThat((double) jumped / draws).isLessThan(days == 11 ? 0.018 : 0.004);
    }
  }

  @Test
  void rulesThatWouldTellNothingAreRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> new HealthRules(7, 0.01, 0.95, 5));
    assertThatIllegalArgumentException().isThrownBy(() -> new HealthRules(10, 0.5, 0.95, 5));
    assertThatIllegalArgumentException().isThrownBy(() -> new HealthRules(10, 0.01, 1, 5));
    assertThatIllegalArgumentException().isThrownBy(() -> new HealthRules(10, 0.01, 0.95, 2));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new HealthLimits(OptionalDouble.of(103), OptionalDouble.of(90)))
        .withMessage("the low limit is below the high one");
  }
}
