package org.restpoint.adapters.simulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.restpoint.adapters.simulated.ResponseModel.FilmDiffusion;
import org.restpoint.adapters.simulated.ResponseModel.Hyperbola;
import org.restpoint.adapters.simulated.ResponseModel.MembraneDiffusion;
import org.restpoint.adapters.simulated.ResponseModel.TwoExponentials;

class MembraneTest {

  private static final double WEAK = 1e-4;
  private static final double STRONG = 1e-2;
  private static final List<ResponseModel> MODELS =
      List.of(
          new FilmDiffusion(Duration.ofSeconds(8)),
          new MembraneDiffusion(Duration.ofMillis(10)),
          new Hyperbola(Duration.ofSeconds(3)),
          new TwoExponentials(Duration.ofSeconds(5), Duration.ofSeconds(50), 0.15));

  static List<ResponseModel> models() {
    return MODELS;
  }

  /** The published formulas, in decades instead of mV: E − E1 is S times what stands here. */
  static List<Case> published() {
    double step = Math.log10(STRONG) - Math.log10(WEAK);
    return List.of(
        new Case(MODELS.get(0), t -> Math.log10(1 - (1 - STRONG / WEAK) * Math.exp(-t / 8))),
        new Case(
            MODELS.get(1), t -> Math.log10(1 - (1 - STRONG / WEAK) / (Math.sqrt(t / 0.01) + 1))),
        new Case(MODELS.get(2), t -> step * (1 - t / (t + 3))),
        new Case(MODELS.get(3), t -> step * (0.85 * Math.exp(-t / 5) + 0.15 * Math.exp(-t / 50))));
  }

  private record Case(ResponseModel model, DoubleUnaryOperator decadesFromRest) {}

  @ParameterizedTest
  @MethodSource("published")
  void oneStepGoesAsPublished(Case published) {
    Membrane membrane = new Membrane(published.model(), STRONG);
    membrane.immerse(60_000, WEAK);
    for (double seconds : new double[] {0, 0.01, 1, 5, 8, 33, 200, 3600}) {
      assertThat(membrane.log10MolesPerLitre(60_000 + 1000 * seconds) - Math.log10(WEAK))
          .as("%s after %s s", published.model(), seconds)
          .isCloseTo(published.decadesFromRest().applyAsDouble(seconds), within(1e-9));
    }
  }

  @ParameterizedTest
  @MethodSource("models")
  void aSolutionLeftAtOnceLeavesNothing(ResponseModel model) {
    Membrane hasty = new Membrane(model, STRONG);
    hasty.immerse(1000, WEAK);
    hasty.immerse(1000, STRONG);
    assertThat(hasty.log10MolesPerLitre(1500)).isCloseTo(-2, within(1e-12));
  }

  @ParameterizedTest
  @MethodSource("models")
  void whatIsLeftTooSoonIsCarriedOver(ResponseModel model) {
    Membrane once = new Membrane(model, WEAK);
    once.immerse(0, STRONG);
    Membrane soiled = new Membrane(model, WEAK);
    soiled.immerse(0, 1);
    double before = soiled.log10MolesPerLitre(30_000);
    soiled.immerse(30_000, STRONG);
    assertThat(soiled.log10MolesPerLitre(30_000)).as("no jump").isEqualTo(before);
    assertThat(soiled.log10MolesPerLitre(40_000)).isGreaterThan(-2);
    assertThat(once.log10MolesPerLitre(10_000)).isLessThan(-2);
  }

  /** So that the slow part of an electrode is not made quick by moving it again. */
  @Test
  void aStepGoesOnBelowTheNextOne() {
    TwoExponentials model = new TwoExponentials(Duration.ofSeconds(1), Duration.ofHours(1), 0.5);
    Membrane membrane = new Membrane(model, WEAK);
    membrane.immerse(0, STRONG);
    membrane.immerse(60_000, WEAK);
    // The slow half of two decades has hardly begun in a minute and is as soon gone again.
    double slow = 2 * 0.5 * (Math.exp(-1 / 60.0) - Math.exp(-2 / 60.0));
    assertThat(membrane.log10MolesPerLitre(120_000)).isCloseTo(-4 + slow, within(1e-9));
  }

  @ParameterizedTest
  @MethodSource("models")
  void manyMovesStayBetweenTheSolutionsAndComeToRest(ResponseModel model) {
    Membrane membrane = new Membrane(model, WEAK);
    for (int move = 1; move <= 1000; move++) {
      membrane.immerse(700.0 * move, move % 2 == 0 ? WEAK : STRONG);
      assertThat(membrane.log10MolesPerLitre(700.0 * move + 350)).isBetween(-4.0, -2.0);
    }
    assertThat(membrane.log10MolesPerLitre(1e15)).isCloseTo(-4, within(1e-3));
  }

  @Test
  void timesThatCannotBeAreRefused() {
    Duration second = Duration.ofSeconds(1);
    assertThatThrownBy(() -> new Hyperbola(Duration.ZERO))
        .hasMessage("the time constant is not above 0");
    assertThatThrownBy(() -> new TwoExponentials(second, second, 0.1))
        .hasMessage("the slow time constant is longer than the quick one");
    assertThatThrownBy(() -> new TwoExponentials(second, Duration.ofSeconds(2), 1.1))
        .hasMessage("the slow share is from 0 to 1: 1.1");
  }
}
