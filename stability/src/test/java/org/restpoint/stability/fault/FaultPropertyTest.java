package org.restpoint.stability.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.restpoint.stability.electrode.Nernst;
import org.restpoint.stability.fault.Finding.Answering;
import org.restpoint.stability.fault.Finding.Faulty;

/** Healthy electrodes are told from faulty ones, whatever they are. */
class FaultPropertyTest {

  private static final double CELSIUS = 20;

  /** Two to six standards of an electrode that works, with its noise. */
  record Bench(int charge, double share, double offset, List<Double> gaps, long seed) {

    List<FaultReading> readings() {
      Random random = new Random(seed);
      double slope = share * Nernst.idealSlopeMillivoltsPerDecade(charge, CELSIUS);
      List<FaultReading> readings = new ArrayList<>();
      double logarithm = -6;
      for (double gap : gaps) {
        logarithm += gap;
        double noise = 0.3 * random.nextDouble();
        double millivolts = offset + slope * logarithm + noise * random.nextGaussian();
        readings.add(
            new FaultReading(
                "standard",
                OptionalDouble.of(logarithm),
                millivolts,
                OptionalDouble.of(noise),
                OptionalDouble.of(4 * noise)));
      }
      return readings;
    }

    Finding found(List<FaultReading> readings) {
      return new FaultFinder(charge, CELSIUS).find(readings);
    }
  }

  @Provide
  Arbitrary<Bench> benches() {
    return Combinators.combine(
            Arbitraries.of(-2, -1, 1, 2),
            Arbitraries.doubles().between(0.8, 1.05),
            Arbitraries.doubles().between(-500, 500),
            Arbitraries.doubles().between(0.35, 1).list().ofMinSize(2).ofMaxSize(6),
            Arbitraries.longs())
        .as(Bench::new);
  }

  private static List<FaultReading> with(List<FaultReading> readings, DoubleUnaryOperator change) {
    return readings.stream()
        .map(
            r ->
                new FaultReading(
                    r.solution(),
                    r.log10MolesPerLitre(),
                    change.applyAsDouble(r.millivolts()),
                    r.noiseMillivolts(),
                    r.spreadMillivolts()))
        .toList();
  }

  private static Fault fault(Finding finding) {
    assertThat(finding).isInstanceOf(Faulty.class);
    return ((Faulty) finding).fault();
  }

  @Property
  void anElectrodeThatWorksHasNoFault(@ForAll("benches") Bench bench) {
    Finding finding = bench.found(bench.readings());
    assertThat(finding).isInstanceOf(Answering.class);
    // Two standards 0.35 decade of a divalent ion apart, 10 mV, each out by up to 4·0.3 mV.
    assertThat(((Answering) finding).slopePercent()).isCloseTo(100 * bench.share(), within(20.0));
  }

  @Property
  void turnedRoundItIsReversed(@ForAll("benches") Bench bench) {
    assertThat(fault(bench.found(with(bench.readings(), e -> -e)))).isEqualTo(Fault.REVERSED);
  }

  @Property
  void heldAtZeroItIsShorted(@ForAll("benches") Bench bench) {
    assertThat(fault(bench.found(with(bench.readings(), e -> 0 * e))))
        .isEqualTo(Fault.SHORTED_INPUT);
  }

  @Property
  void atOnePotentialItIsDead(
      @ForAll("benches") Bench bench, @ForAll @DoubleRange(min = 3, max = 1400) double constant) {
    assertThat(fault(bench.found(with(bench.readings(), e -> 180)))).isEqualTo(Fault.DEAD);
    assertThat(fault(bench.found(with(bench.readings(), e -> -constant)))).isEqualTo(Fault.DEAD);
  }

  @Property
  void anOffsetShortOfTheRailChangesNothing(
      @ForAll("benches") Bench bench, @ForAll @DoubleRange(min = -400, max = 400) double offset) {
    List<FaultReading> readings = bench.readings();
    assertThat(bench.found(with(readings, e -> e + offset))).isInstanceOf(Answering.class);
    assertThat(fault(bench.found(with(readings, e -> offset - e)))).isEqualTo(Fault.REVERSED);
    assertThat(fault(bench.found(with(readings, e -> e + 3000)))).isEqualTo(Fault.OPEN_INPUT);
  }

  @Property
  void theOrderOfTheSolutionsDoesNotMatter(@ForAll("benches") Bench bench, @ForAll Random random) {
    List<FaultReading> readings = bench.readings();
    List<FaultReading> shuffled = new ArrayList<>(readings);
    Collections.shuffle(shuffled, random);
    assertThat(bench.found(shuffled)).isEqualTo(bench.found(readings));
    assertThat(bench.found(with(shuffled, e -> -e)))
        .isEqualTo(bench.found(with(readings, e -> -e)));
  }
}
