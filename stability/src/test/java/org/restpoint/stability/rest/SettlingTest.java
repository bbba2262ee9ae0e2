package org.restpoint.stability.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.rest.Settling.Stage;

class SettlingTest {

  private static final long SECOND = 1_000_000_000L;

  /** An origin far from zero, as any clock has. */
  private static final long START = 1_700_000_000L * SECOND;

  private static final SettleLimits LIMITS =
      new SettleLimits(Duration.ofSeconds(20), Duration.ofMinutes(1));

  private static Settling settling() {
    return new Settling(new ConsecutiveRule(3, 0.1).detector(59.16), LIMITS, START);
  }

  private static Stage at(Settling settling, int second, double millivolts) {
    return settling.accept(START + second * SECOND, millivolts);
  }

  @Test
  void aPotentialAtRestFromTheBeginningIsNotCalledSoTooEarly() {
    Settling settling = settling();
    for (int second = 0; second < 20; second++) {
      assertThat(at(settling, second, 5)).isEqualTo(Stage.WAITING);
    }
    assertThat(at(settling, 20, 5)).isEqualTo(Stage.AT_REST);
    assertThat(settling.taken()).isEqualTo(21);
    assertThat(settling.elapsedSeconds()).isEqualTo(20);
    assertThat(settling.potential().millivolts()).isEqualTo(5);
  }

  @Test
  void restBeforeTheEarliestInstantDoesNotCountWhenTheEarliestReadingHasMoved() {
    Settling settling = settling();
    for (int second = 0; second < 20; second++) {
      at(settling, second, 5);
    }
    assertThat(at(settling, 20, 6)).isEqualTo(Stage.WAITING);
    assertThat(at(settling, 21, 6)).isEqualTo(Stage.WAITING);
    assertThat(at(settling, 22, 6)).isEqualTo(Stage.AT_REST);
  }

  @Test
  void aReadingAtTheDeadlineStillDecides() {
    Settling settling = settling();
    at(settling, 58, 5);
    at(settling, 59, 5);
    assertThat(at(settling, 60, 5)).isEqualTo(Stage.AT_REST);
    assertThat(settling.elapsedSeconds()).isEqualTo(60);
  }

  @Test
  void aReadingPastTheDeadlineIsNotTakenAndTheWaitEndsAtTheDeadline() {
    Settling settling = settling();
    at(settling, 58, 5);
    at(settling, 59, 5);
    long late = settling.deadlineNanos() + 1;
    assertThat(settling.accept(late, 5)).isEqualTo(Stage.GIVEN_UP);
    assertThat(settling.taken()).isEqualTo(2);
    assertThat(settling.progress().readings()).isEqualTo(2);
    assertThat(settling.elapsedSeconds()).isEqualTo(60);
    assertThatThrownBy(settling::potential)
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("not at rest");
  }

  @Test
  void silenceGivesUpPastTheDeadlineAndNotAtIt() {
    Settling settling = settling();
    assertThat(settling.deadlineNanos()).isEqualTo(START + 60 * SECOND);
    assertThat(settling.elapse(START + 60 * SECOND)).isEqualTo(Stage.WAITING);
    assertThatThrownBy(settling::elapsedSeconds).isInstanceOf(IllegalStateException.class);
    assertThat(settling.elapse(START + 60 * SECOND + 1)).isEqualTo(Stage.GIVEN_UP);
    assertThat(settling.elapse(START + 900 * SECOND)).isEqualTo(Stage.GIVEN_UP);
    assertThat(settling.elapsedSeconds()).isEqualTo(60);
    assertThat(settling.taken()).isZero();
    assertThatThrownBy(settling::progress).isInstanceOf(IllegalStateException.class);
  }

  @Test
  void nothingChangesAfterADecision() {
    Settling settling = settling();
    at(settling, 28, 5);
    at(settling, 29, 5);
    assertThat(at(settling, 30, 5)).isEqualTo(Stage.AT_REST);
    assertThat(at(settling, 31, 900)).isEqualTo(Stage.AT_REST);
    assertThat(settling.elapse(START + 900 * SECOND)).isEqualTo(Stage.AT_REST);
    assertThat(settling.taken()).isEqualTo(3);
    assertThat(settling.elapsedSeconds()).isEqualTo(30);
    assertThat(settling.potential().millivolts()).isEqualTo(5);
  }

  @Test
  void limitsThatLeaveNoTimeAreRefused() {
    Duration second = Duration.ofSeconds(1);
    assertThatThrownBy(() -> new SettleLimits(second.negated(), second))
        .hasMessage("not-before is 0 or above");
    assertThatThrownBy(() -> new SettleLimits(second, second))
        .hasMessage("give-up-after is longer than not-before");
    assertThatThrownBy(() -> new SettleLimits(Duration.ZERO, Duration.ofDays(366)))
        .hasMessage("give-up-after is 365 days at most");
    assertThat(new SettleLimits(Duration.ZERO, Duration.ofDays(365)).giveUpAfter())
        .isEqualTo(Duration.ofDays(365));
  }

  @Test
  void aRestingPotentialThatCannotBeIsRefused() {
    assertThatThrownBy(() -> new RestingPotential(Double.NaN, 0, false, 0, Optional.empty(), false))
        .hasMessage("a potential is a finite number, not NaN");
    assertThatThrownBy(() -> new RestingPotential(1, -1, false, 0, Optional.empty(), false))
        .hasMessage("an uncertainty and a spread are 0 or above");
    assertThatThrownBy(() -> new RestingPotential(1, 0, false, Double.NaN, Optional.empty(), false))
        .hasMessage("an uncertainty and a spread are 0 or above");
  }
}
