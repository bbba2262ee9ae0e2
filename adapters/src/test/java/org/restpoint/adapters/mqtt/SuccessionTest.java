package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.adapters.mqtt.Succession.Verdict;
import org.restpoint.adapters.mqtt.Succession.Verdict.Again;
import org.restpoint.adapters.mqtt.Succession.Verdict.Next;
import org.restpoint.adapters.mqtt.Succession.Verdict.Refused;
import org.restpoint.stability.reading.Reading;

/** What follows on what was taken before, and what does not. */
class SuccessionTest {

  private static final Instant NOON = Instant.parse("2026-04-02T12:00:00Z");

  private final Succession succession = new Succession(Duration.ofMinutes(5));

  private static Instant at(double seconds) {
    return NOON.plusMillis(Math.round(seconds * 1_000));
  }

  private static Observation says(double seconds, double millivolts) {
    return new Observation(Reading.ofMillivolts(at(seconds), millivolts), true);
  }

  private static Verdict next(double seconds, double millivolts) {
    return new Next(Reading.ofMillivolts(at(seconds), millivolts));
  }

  private List<Verdict> come(double arrival, Observation... observations) {
    return succession.judge(at(arrival), Arrays.asList(observations));
  }

  @Test
  void itsOwnTimeIsTheReadings() {
    assertThat(come(1, says(0, 187))).containsExactly(next(0, 187));
    assertThat(come(2, says(1, 187))).containsExactly(next(1, 187));
    assertThat(come(303, says(3, 188))).containsExactly(next(3, 188));
  }

  @Test
  void theSameTimeWithTheSameValuesIsARepetitionAndWithOthersIsNot() {
    come(1, says(-1, 186), says(0, 187));
    assertThat(come(2, says(0, 187), says(1, 188)))
        .containsExactly(
            new Again("a reading of its time, 2026-04-02T12:00:00Z, with its values was taken"),
            next(1, 188));
    assertThat(come(3, says(-1, 186.5)))
        .containsExactly(
            new Refused(
                "a reading of its time, 2026-04-02T11:59:59Z, was taken with other values"));
  }

  @Test
  void whatGoesBackBehindTheLastReadingIsRefused() {
    come(11, says(10, 187));
    assertThat(come(12, says(2.5, 186), says(11, 188)))
        .containsExactly(
            new Refused(
                "its time, 2026-04-02T12:00:02.500Z, is 7.5 s before that of the last reading"),
            next(11, 188));
  }

  @Test
  void aFastClockIsHeldBackToTheArrivalAndDistancesStay() {
    assertThat(come(10, says(12, 1), says(13.5, 2), says(15, 3)))
        .containsExactly(next(7, 1), next(8.5, 2), next(10, 3));
    assertThat(come(10.4, says(15, 3), says(15.5, 4)))
        .containsExactly(
            new Again("a reading of its time, 2026-04-02T12:00:15Z, with its values was taken"),
            next(10.4, 4));
    assertThat(come(12, says(11.9, 5))).containsExactly(next(11.9, 5));
  }

  @Test
  void withoutATimeOfItsOwnEverythingFollows() {
    Observation same = new Observation(Reading.ofMillivolts(at(0), 187), false);
    assertThat(come(0, same)).containsExactly(next(0, 187));
    assertThat(come(0, same)).containsExactly(next(0, 187));
    assertThat(come(1, says(-3, 186)))
        .containsExactly(
            new Refused("its time, 2026-04-02T11:59:57Z, is 3 s before that of the last reading"));
  }

  @Test
  void aClockThatIsPutBackBeginsAnew() {
    come(0, says(0, 187));
    assertThat(come(-3_600, says(-3_600, 187))).containsExactly(next(-3_600, 187));
    assertThat(come(-3_599, says(-3_600, 187))).hasExactlyElementsOfTypes(Again.class);
  }

  @Test
  void onlySoManyTimesAreRemembered() {
    Succession lasting = new Succession(Duration.ofHours(1));
    for (int i = 0; i <= Succession.REMEMBERED; i++) {
      lasting.judge(at(i), List.of(says(i, 187)));
    }
    assertThat(lasting.judge(at(1_024), List.of(says(0, 187), says(1, 187))))
        .hasExactlyElementsOfTypes(Refused.class, Again.class);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          2026-04-02T11:54:59.999Z | 5 min 0.001 s behind the clock, at most 5 min is allowed: is the device's clock, or this computer's, wrong?
          2026-04-02T12:07:00Z | 7 min ahead of the clock, at most 5 min is allowed: is the device's clock, or this computer's, wrong?
          2026-04-02T14:00:00.900Z | 2 h ahead of the clock, at most 5 min is allowed: a local time taken for UTC, or the other way round?
          2026-04-02T06:29:00Z | 5 h behind the clock, at most 5 min is allowed: a local time taken for UTC, or the other way round?
          2026-04-09T12:00:00Z | 7 d ahead of the clock, at most 5 min is allowed: is the device's clock, or this computer's, wrong?
          1970-01-21T13:05:31.200Z | 20524 d behind the clock, at most 5 min is allowed: a clock that was never set, or seconds taken for milliseconds?
          +58221-08-30T20:00:00Z | 20524952 d ahead of the clock, at most 5 min is allowed: milliseconds taken for seconds?
          """)
  void aTimeTooFarOffIsRefusedWithByHowMuchAndWhichWay(Instant time, String reason) {
    Observation observation = new Observation(Reading.ofMillivolts(time, 187), true);
    List<Verdict> verdicts = come(0, observation);
    assertThat(verdicts).hasExactlyElementsOfTypes(Refused.class);
    assertThat(((Refused) verdicts.get(0)).why())
        .isEqualTo("its time, %s, is ".formatted(time) + reason);
  }

  @Test
  void exactlyTheLimitIsAllowedEitherWay() {
    assertThat(come(0, says(-300, 1))).containsExactly(next(-300, 1));
    assertThat(come(0, says(300, 2))).containsExactly(next(0, 2));
  }
}
