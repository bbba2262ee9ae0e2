package org.restpoint.stability.settle1;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.rest.ConsecutiveRule;

class EnvelopeTest {

  private static Swept setting(double falseSettles, double seconds, double never) {
    Candidate candidate = Candidate.of(new ConsecutiveRule(5, 0.1));
    return new Swept(candidate, never, falseSettles, falseSettles, 0, 0.4, seconds);
  }

  private static final Swept SLOW = setting(0.02, 400, 0.10);
  private static final Swept MIDDLE = setting(0.05, 300, 0.01);
  private static final Swept FAST = setting(0.20, 100, 0);
  private static final Swept WORSE = setting(0.06, 350, 0);
  private static final Swept GIVES_UP = setting(0.01, 200, 0.11);

  private static final Envelope ENVELOPE =
      new Envelope(List.of(FAST, WORSE, GIVES_UP, SLOW, MIDDLE));

  @Test
  void itHoldsTheSettingsThatNoOtherBeatsInBothAndThatSettleOftenEnough() {
    assertThat(ENVELOPE.steps()).containsExactly(SLOW, MIDDLE, FAST);
  }

  @Test
  void atAShareStandsTheSoonestSettingWithNoMore() {
    assertThat(ENVELOPE.at(0.02)).contains(SLOW);
    assertThat(ENVELOPE.at(0.049)).contains(SLOW);
    assertThat(ENVELOPE.at(0.05)).contains(MIDDLE);
    assertThat(ENVELOPE.at(0.199)).contains(MIDDLE);
    assertThat(ENVELOPE.at(1)).contains(FAST);
  }

  @Test
  void belowTheFewestNothingStandsAndTheFewestIsNamed() {
    assertThat(ENVELOPE.at(0.019)).isEmpty();
    assertThat(ENVELOPE.fewestFalse()).contains(SLOW);
  }

  @Test
  void ofTwoWithTheSameShareTheSoonerStands() {
    Swept sooner = setting(0.02, 390, 0);
    assertThat(new Envelope(List.of(SLOW, sooner)).steps()).containsExactly(sooner);
  }

  @Test
  void whereAllGiveUpTooOftenThereIsNone() {
    Envelope empty = new Envelope(List.of(GIVES_UP));
    assertThat(empty.steps()).isEmpty();
    assertThat(empty.at(1)).isEmpty();
    assertThat(empty.fewestFalse()).isEqualTo(Optional.empty());
  }

  @Test
  void anAimChoosesOnTheEnvelope() {
    assertThat(Aim.ALL.get(0).choose(ENVELOPE)).contains(SLOW);
    assertThat(new Aim("", 0.05).choose(ENVELOPE)).contains(MIDDLE);
    assertThat(new Aim("", 0.01).choose(ENVELOPE)).isEmpty();
  }
}
