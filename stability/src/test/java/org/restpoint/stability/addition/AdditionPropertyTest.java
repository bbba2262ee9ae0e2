package org.restpoint.stability.addition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.restpoint.stability.addition.KnownAdditionTest.answer;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.restpoint.stability.preparation.Volume;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Source.Quantity;

/** What may change in an experiment without changing its result. */
class AdditionPropertyTest {

  /** Rounding of a difference that is at least a tenth of its terms, and of its derivatives. */
  private static final double ROUNDING_PERCENT = 1e-5;

  /**
   * An experiment by single or by multiple addition, every number of which is scaled in its own
   * way.
   */
  record Experiment(
      double sample,
      double adjustor,
      double standard,
      double standardConcentration,
      double before,
      double decades,
      double slope) {

    Experiment volumesTimes(double factor) {
      return new Experiment(
          factor * sample,
          factor * adjustor,
          factor * standard,
          standardConcentration,
          before,
          decades,
          slope);
    }

    Experiment concentrationTimes(double factor) {
      return new Experiment(
          sample, adjustor, standard, factor * standardConcentration, before, decades, slope);
    }

    Experiment potentialsTimes(double factor) {
      return new Experiment(
          sample,
          adjustor,
          standard,
          standardConcentration,
          factor * before,
          decades,
          factor * slope);
    }

    Experiment potentialsPlus(double offset) {
      return new Experiment(
          sample, adjustor, standard, standardConcentration, before + offset, decades, slope);
    }

    Vessel vessel() {
      return Vessel.of(
          new Volume("sample", sample, 0.001 * sample),
          new Volume("adjustor", adjustor, 0.01 * adjustor));
    }

    Quantity concentration() {
      return Quantity.of("standard", "1", standardConcentration, 0.005 * standardConcentration);
    }

    double noise() {
      return 0.002 * Math.abs(slope);
    }

    Quantity electrode() {
      return Quantity.of("slope", "mV", slope, 0.01 * Math.abs(slope));
    }

    Budget single() {
      PotentialStep step =
          PotentialStep.of(
              before,
              noise(),
              before + decades * slope,
              noise(),
              slope,
              electrode().standardUncertainty());
      return answer(
              new KnownAddition(
                      vessel(), new Volume("standard", standard, 0.003 * standard), concentration())
                  .of(step))
          .concentration();
    }

    /** Four additions whose potentials lie about the Nernstian ones of the single addition. */
    List<GranPoint> points() {
      double found = single().value();
      List<GranPoint> points = new ArrayList<>();
      for (int i = 0; i < 5; i++) {
        double added = i * standard;
        double inside =
            (found * sample + standardConcentration * added) / (sample + adjustor + added);
        double off = (i % 2 == 0 ? 0.002 : -0.002) * slope;
        double start = found * sample / (sample + adjustor);
        points.add(
            new GranPoint(
                added, 0.001 * added, before + slope * Math.log10(inside / start) + off, noise()));
      }
      return points;
    }

    Budget multiple(List<GranPoint> points) {
      return answer(new GranPlot(vessel(), concentration(), 0.002, points).of(electrode()))
          .concentration();
    }
  }

  @Provide
  Arbitrary<Experiment> experiments() {
    return Combinators.combine(
            Arbitraries.doubles().between(20, 200),
            Arbitraries.doubles().between(0.5, 50),
            Arbitraries.doubles().between(0.5, 5),
            Arbitraries.doubles().between(1e-3, 1000).ofScale(4),
            Arbitraries.doubles().between(-300, 300),
            Arbitraries.doubles().between(0.15, 0.9),
            Arbitraries.of(-59.2, -57.0, -29.0, 28.4, 56.0, 58.9))
        .as(Experiment::new);
  }

  private static void same(Budget found, Budget expected, double factor) {
    assertThat(found.value())
        .isCloseTo(factor * expected.value(), withinPercentage(ROUNDING_PERCENT));
    assertThat(found.standardUncertainty())
        .isCloseTo(factor * expected.standardUncertainty(), withinPercentage(0.01));
  }

  private static void sameByBothMethods(Experiment changed, Experiment original, double factor) {
    same(changed.single(), original.single(), factor);
    same(changed.multiple(changed.points()), original.multiple(original.points()), factor);
  }

  @Property(tries = 200)
  void allVolumesTimesANumberChangeNothing(
      @ForAll("experiments") Experiment original,
      @ForAll @DoubleRange(min = 0.1, max = 10) double factor) {
    sameByBothMethods(original.volumesTimes(factor), original, 1);
  }

  @Property(tries = 200)
  void theResultIsInTheUnitOfTheStandard(
      @ForAll("experiments") Experiment original,
      @ForAll @DoubleRange(min = 0.01, max = 1000) double factor) {
    sameByBothMethods(original.concentrationTimes(factor), original, factor);
  }

  @Property(tries = 200)
  void theMirroredElectrodeOfTheOppositeChargeFindsTheSame(
      @ForAll("experiments") Experiment original) {
    sameByBothMethods(original.potentialsTimes(-1), original, 1);
  }

  @Property(tries = 200)
  void voltsInPlaceOfMillivoltsFindTheSame(@ForAll("experiments") Experiment original) {
    sameByBothMethods(original.potentialsTimes(0.001), original, 1);
  }

  @Property(tries = 200)
  void anOffsetCommonToAllPotentialsChangesNothing(
      @ForAll("experiments") Experiment original,
      @ForAll @DoubleRange(min = -500, max = 500) double offset) {
    sameByBothMethods(original.potentialsPlus(offset), original, 1);
  }

  @Property(tries = 200)
  void theOrderOfAdditionsOnThePlotChangesNothing(
      @ForAll("experiments") Experiment original, @ForAll long seed) {
    List<GranPoint> shuffled = new ArrayList<>(original.points());
    Collections.shuffle(shuffled, new Random(seed));

    same(original.multiple(shuffled), original.multiple(original.points()), 1);
  }
}
