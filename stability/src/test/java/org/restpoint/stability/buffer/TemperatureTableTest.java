package org.restpoint.stability.buffer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.buffer.TemperatureTable.Point;

class TemperatureTableTest {

  private static final TemperatureTable TABLE =
      new TemperatureTable(List.of(new Point(0, 1), new Point(10, 3), new Point(30, -1)));

  @Test
  void betweenTwoRowsTheValueIsOnTheLineThroughThem() {
    assertThat(TABLE.at(5).orElseThrow()).isCloseTo(2, within(1e-15));
    assertThat(TABLE.at(12.5).orElseThrow()).isCloseTo(2.5, within(1e-15));
  }

  @Test
  void atARowItIsTheRowsOwnValueToTheLastBit() {
    TABLE.points().forEach(row -> assertThat(TABLE.at(row.celsius())).hasValue(row.value()));
  }

  @Test
  void beyondTheEndsAndForNoNumberThereIsNone() {
    assertThat(TABLE.lowestCelsius()).isZero();
    assertThat(TABLE.highestCelsius()).isEqualTo(30);
    double[] beyond = {
      -Double.MIN_VALUE, Math.nextUp(30.0), Double.NaN, Double.NEGATIVE_INFINITY, 1e300
    };
    for (double celsius : beyond) {
      assertThat(TABLE.at(celsius)).as("%s °C", celsius).isEmpty();
    }
  }

  @Test
  void equalDistancesNeedNoTemperatures() {
    TemperatureTable table = TemperatureTable.every(-5, 2.5, 7, 8, 9);
    assertThat(table.points())
        .containsExactly(new Point(-5, 7), new Point(-2.5, 8), new Point(0, 9));
  }

  @Test
  void aTableHasTwoRowsAtLeastWhoseTemperaturesRise() {
    assertThatThrownBy(() -> TemperatureTable.every(0, 5, 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a table over temperature has at least two rows, not 1");
    assertThatThrownBy(() -> TemperatureTable.every(0, 0, 1, 2))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the temperatures of a table rise from row to row: after 0.0 °C comes 0.0 °C");
    assertThatThrownBy(() -> TemperatureTable.every(0, 5, 1, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a row holds two finite numbers, not 5.0 °C and NaN");
  }

  @Property
  void aStraightLineIsMetWhateverItsRows(
      @ForAll @Size(min = 2, max = 12) List<@DoubleRange(min = 0.1, max = 10) Double> steps,
      @ForAll @DoubleRange(min = -3, max = 3) @Scale(8) double slope,
      @ForAll @DoubleRange(min = 0, max = 1) @Scale(8) double share) {
    List<Point> points = new ArrayList<>();
    double celsius = -20;
    for (double step : steps) {
      celsius += step;
      points.add(new Point(celsius, 4 + slope * celsius));
    }
    TemperatureTable table = new TemperatureTable(points);
    double at =
        Math.min(
            table.highestCelsius(),
            table.lowestCelsius() + share * (table.highestCelsius() - table.lowestCelsius()));
    assertThat(table.at(at).orElseThrow()).isCloseTo(4 + slope * at, within(1e-11));
  }
}
