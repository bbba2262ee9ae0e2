package org.restpoint.stability.detection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

/** Units, signs and order change limits and ranges as they must, and not otherwise. */
class DetectionPropertyTest {

  private static final LinearRangeSearch SEARCH =
      new LinearRangeSearch(new Linearity.WithinShare(0.1), 40);

  private static final class Standards {
    final double[] c;
    final double[] y;
    final double[] u;

    Standards(List<double[]> rows, double factor, double sign) {
      c = rows.stream().mapToDouble(row -> row[0] * factor).toArray();
      y = rows.stream().mapToDouble(row -> row[1] * sign).toArray();
      u = rows.stream().mapToDouble(row -> row[2]).toArray();
    }

    DetectionLimit limit() {
      return SegmentCrossing.of(c, y, u);
    }

    LinearRange range() {
      return SEARCH.among(c, y, u);
    }
  }

  private static List<double[]> rows(Random random, double background) {
    List<double[]> rows = new ArrayList<>();
    for (int i = 0; i < 9; i++) {
      double c = Math.pow(10, -9 + i + 0.3 * random.nextDouble());
      double u = 0.3 + random.nextDouble();
      rows.add(
          new double[] {c, 80 + 58 * Math.log10(c + background) + u * random.nextGaussian(), u});
    }
    return rows;
  }

  @Property(tries = 300)
  void theLimitMovesWithTheUnitAndStaysWithChargeAndOrder(
      @ForAll Random random,
      @ForAll @DoubleRange(min = -7, max = -4) double logBackground,
      @ForAll @DoubleRange(min = 0.01, max = 100_000) double factor) {
    List<double[]> rows = rows(random, Math.pow(10, logBackground));
    DetectionLimit limit = new Standards(rows, 1, 1).limit();
    assertThat(limit).isInstanceOf(DetectionLimit.Crossing.class);
    DetectionLimit.Crossing one = (DetectionLimit.Crossing) limit;
    assertThat(one.log10Concentration()).isCloseTo(logBackground, within(0.5));
    Collections.shuffle(rows, random);
    DetectionLimit.Crossing other =
        (DetectionLimit.Crossing) new Standards(rows, factor, -1).limit();
    assertThat(other.log10Concentration())
        .isCloseTo(one.log10Concentration() + Math.log10(factor), within(1e-9));
    assertThat(other.standardUncertaintyDecades())
        .isCloseTo(one.standardUncertaintyDecades(), within(1e-9));
    assertThat(other.lowStandards()).isEqualTo(one.lowStandards());
    assertThat(other.linear().estimate().slope())
        .isCloseTo(-one.linear().estimate().slope(), within(1e-9));
  }

  @Property(tries = 300)
  void theRangeMovesWithTheUnitAndStaysWithChargeAndOrder(
      @ForAll Random random,
      @ForAll @DoubleRange(min = -7, max = -4) double logBackground,
      @ForAll @DoubleRange(min = 0.01, max = 100_000) double factor) {
    List<double[]> rows = rows(random, Math.pow(10, logBackground));
    LinearRange range = new Standards(rows, 1, 1).range();
    Collections.shuffle(rows, random);
    LinearRange moved = new Standards(rows, factor, -1).range();
    assertThat(moved.getClass()).isEqualTo(range.getClass());
    if (range instanceof LinearRange.Found one && moved instanceof LinearRange.Found other) {
      assertThat(other.lowest() / factor / one.lowest()).isCloseTo(1, within(1e-9));
      assertThat(other.highest() / factor / one.highest()).isCloseTo(1, within(1e-9));
      assertThat(one.highest()).isGreaterThan(one.lowest());
    }
  }
}
