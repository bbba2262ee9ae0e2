package org.restpoint.stability.settle1;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class LearningTest {

  private static final int ELECTRODES = 24;

  /** Of 600 readings each: 1.3 times and a point are loose, the table tells 1.5. */
  @Test
  void aKnownElectrodeIsSoonerAtRestAndFirstReadingsAreAsWithout() {
    LearningTable table = LearningTable.of(1, ELECTRODES, LearningTable.READINGS);
    Scores without = LearningTable.scores(table.without(), 16, 40);
    Scores with = LearningTable.scores(table.with(), 16, 40);
    assertThat(without.meanSeconds() / with.meanSeconds()).isGreaterThan(1.3);
    assertThat(without.medianSeconds() / with.medianSeconds()).isGreaterThan(1.3);
    assertThat(with.overOneMillivolt()).isLessThanOrEqualTo(without.overOneMillivolt() + 0.01);
    assertThat(with.never()).isLessThanOrEqualTo(without.never() + 0.005);
    for (int i = 0; i < ELECTRODES; i++) {
      assertThat(table.with().get(i).get(0)).isEqualTo(table.without().get(i).get(0));
    }
  }

  @Test
  void anElectrodeComesToRestTheSameWayEachTime() {
    List<Curve> readings = OneElectrode.readings(3, 12);
    assertThat(LearningTable.taught(readings)).isEqualTo(LearningTable.taught(readings));
    assertThat(readings.stream().map(Curve::model).distinct()).hasSize(1);
    assertThat(readings.stream().map(Curve::noise).distinct()).hasSize(1);
    assertThat(readings.stream().map(Curve::slopeMillivoltsPerDecade).distinct()).hasSize(1);
  }

  /** Without the level and the direction, times scatter by a quarter about the electrode's own. */
  @Test
  void theTimesOfAnElectrodeScatterByAQuarterFromReadingToReading() {
    List<Curve> readings =
        OneElectrode.readings(11, 1600).stream()
            .filter(it -> it.step().log10After() > -3)
            .filter(it -> it.step().log10After() > it.step().log10Before())
            .toList();
    double[] logs = readings.stream().mapToDouble(it -> Math.log(time(it.response()))).toArray();
    double mean = Arrays.stream(logs).average().orElseThrow();
    double square =
        Arrays.stream(logs).map(it -> (it - mean) * (it - mean)).average().orElseThrow();
    assertThat(readings).hasSizeGreaterThan(300);
    assertThat(Math.sqrt(square)).isBetween(0.21, 0.29);
  }

  private static double time(Response response) {
    if (response instanceof Response.Film film) {
      return film.timeConstantSeconds();
    }
    if (response instanceof Response.Membrane membrane) {
      return membrane.timeConstantSeconds();
    }
    if (response instanceof Response.Hyperbola hyperbola) {
      return hyperbola.halfWaySeconds();
    }
    return ((Response.TwoExponentials) response).fastSeconds();
  }

  @Test
  void aNewMembraneLeavesTheReadingsBeforeItAsTheyAre() {
    List<Curve> same = OneElectrode.readings(5, 6);
    List<Curve> changed = OneElectrode.readings(5, 6, 4);
    for (int i = 0; i < 4; i++) {
      assertThat(changed.get(i).trace().millivolts())
          .containsExactly(same.get(i).trace().millivolts());
    }
    assertThat(changed.get(4).response()).isNotEqualTo(same.get(4).response());
  }
}
