package org.restpoint.stability.suspicion;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class MoveLimitTest {

  private static final MoveLimit LIMIT = new MoveLimit(6);

  private static StandardHistory moving(double... millivolts) {
    StandardHistory history = StandardHistory.none();
    for (double moved : millivolts) {
      history =
          history.with(
              new StandardHistory.Passed(
                  Instant.EPOCH, OptionalDouble.of(moved), false, 25, 30, 0.1));
    }
    return history;
  }

  @Test
  void theLimitItselfStillPassesAndANightAllowsTwiceAsMuch() {
    assertThat(LIMIT.against(-6, false, StandardHistory.none())).isEmpty();
    assertThat(LIMIT.against(6.1, false, StandardHistory.none()))
        .contains("it may move by 6.0 mV within a day");
    assertThat(LIMIT.against(-12, true, StandardHistory.none())).isEmpty();
    assertThat(LIMIT.against(-12.1, true, StandardHistory.none()))
        .contains("it may move by 12.0 mV after a night");
  }

  @Test
  void itsOwnHistoryHoldsFromEightReadingsOn() {
    StandardHistory seven = moving(1, 1.1, 0.9, 1, 1.2, 0.8, 1);
    assertThat(LIMIT.against(5, false, seven)).isEmpty();
    StandardHistory eight = seven.with(seven.passed().get(0));
    assertThat(LIMIT.against(4, false, eight)).isEmpty();
    assertThat(LIMIT.against(4.1, false, eight))
        .contains("the last 8 times it moved by 1.00 mV, give or take 0.07");
    assertThat(LIMIT.against(4.1, true, eight)).isEmpty();
  }

  @Test
  void aRestlessHistoryAllowsMore() {
    StandardHistory restless = moving(-2, 2, -1, 1, -2, 2, -1, 1);
    assertThat(LIMIT.against(5.9, false, restless)).isEmpty();
  }

  @Test
  void aHistoryKeepsTheLastTwenty() {
    StandardHistory history = moving(new double[30]);
    assertThat(history.passed()).hasSize(StandardHistory.MOST);
    assertThat(history.usualSeconds()).hasValue(30);
    assertThat(moving(0, 0).usualSeconds()).isEmpty();
  }
}
