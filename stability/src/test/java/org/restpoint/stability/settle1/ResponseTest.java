package org.restpoint.stability.settle1;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ResponseTest {

  /** From 1e−5 to 1e−3 mol/L: two decades up, from 295.8 mV to 177.48 mV. */
  private static final Step UP = new Step(298.15, -59.16, -5, -3);

  /** One decade down. */
  private static final Step DOWN = new Step(298.15, -59.16, -2, -3);

  static List<Response> all() {
    return List.of(
        new Response.Film(5),
        new Response.Membrane(0.01),
        new Response.Hyperbola(3),
        new Response.TwoExponentials(5, 50, 0.2));
  }

  @ParameterizedTest
  @MethodSource("all")
  void atTheStepItShowsTheOldPotential(Response response) {
    assertThat(response.millivoltsAt(UP, 0)).isCloseTo(295.8, within(1e-9));
    assertThat(response.millivoltsAt(DOWN, 0)).isCloseTo(118.32, within(1e-9));
  }

  /** The membrane is the slowest: after 1e20 s a share of 1e−11 is left of a ratio of 10. */
  @ParameterizedTest
  @MethodSource("all")
  void inTheEndItShowsTheRestingPotential(Response response) {
    assertThat(response.millivoltsAt(UP, 1e20)).isCloseTo(177.48, within(1e-8));
    assertThat(response.millivoltsAt(DOWN, 1e20)).isCloseTo(177.48, within(1e-8));
  }

  @ParameterizedTest
  @MethodSource("all")
  void itComesNearerAllTheTime(Response response) {
    double before = Math.abs(response.millivoltsAt(DOWN, 0) - DOWN.restingMillivolts());
    for (int t = 1; t < 100; t++) {
      double after = Math.abs(response.millivoltsAt(DOWN, t) - DOWN.restingMillivolts());
      assertThat(after).isLessThan(before);
      before = after;
    }
  }

  /** Half of the change of activity at the surface: log10 0.505 = −0.2967086. */
  @Test
  void aFilmIsHalfWayInActivityAfterLnTwoTimeConstants() {
    double at = new Response.Film(5).millivoltsAt(UP, 5 * Math.log(2));
    assertThat(at).isCloseTo(177.48 + 59.16 * 0.2967086, within(1e-5));
  }

  /** The same half after one time constant, a third after four. */
  @Test
  void aMembraneIsHalfWayInActivityAfterOneTimeConstant() {
    Response membrane = new Response.Membrane(0.25);
    assertThat(membrane.millivoltsAt(UP, 0.25)).isCloseTo(177.48 + 59.16 * 0.2967086, within(1e-5));
    assertThat(membrane.millivoltsAt(UP, 1)).isCloseTo(177.48 + 59.16 * 0.1739252, within(1e-5));
  }

  @Test
  void aHyperbolaIsHalfWayInPotentialAfterK() {
    assertThat(new Response.Hyperbola(3).millivoltsAt(UP, 3)).isCloseTo(236.64, within(1e-9));
    assertThat(new Response.Hyperbola(3).millivoltsAt(UP, 27)).isCloseTo(189.312, within(1e-9));
  }

  /** After ten halvings of the fast part and one of the slow: 0.8/1024 + 0.2/2 = 0.10078125. */
  @Test
  void twoExponentialsAddUp() {
    double at = new Response.TwoExponentials(5, 50, 0.2).millivoltsAt(UP, 50 * Math.log(2));
    assertThat(at).isCloseTo(177.48 + 118.32 * 0.10078125, within(1e-9));
  }
}
