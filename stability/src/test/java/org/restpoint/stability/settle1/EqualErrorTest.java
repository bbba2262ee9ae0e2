package org.restpoint.stability.settle1;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.rest.ConsecutiveRule;

/** One curve with a plateau 3 mV off its rest until 100 s, and one that rests at once. */
class EqualErrorTest {

  private static final List<Curve> CURVES =
      List.of(Curves.showing(t -> t < 100 ? 3 : 0), Curves.showing(t -> 0));
  private static final Sets SETS = new Sets(CURVES, List.of(1L), List.of(CURVES));

  /** Wrong on the plateau, at 9 s on both. */
  private static final Candidate SHORT = Candidate.of(new ConsecutiveRule(10, 0.1));

  /** Right on both, at 249 s and 149 s. */
  private static final Candidate LONG = Candidate.of(new ConsecutiveRule(150, 0.1));

  private static Family of(Candidate... settings) {
    List<Swept> swept =
        List.of(settings).stream()
            .map(setting -> swept(setting, Scores.of(setting, CURVES)))
            .toList();
    return new Family("family", swept, List.of(swept));
  }

  private static Swept swept(Candidate setting, Scores scores) {
    return new Swept(
        setting,
        scores.never(),
        scores.overOneMillivolt(),
        scores.overHalfMillivolt(),
        scores.bias(),
        scores.rootMeanSquare(),
        scores.meanSeconds());
  }

  @Test
  void aCandidateIsHeldToASettingWithNoMoreFalseSettles() {
    Row row = Row.of(Candidate.of(new ConsecutiveRule(110, 0.1)), SETS);
    EqualError equal = EqualError.of(row, of(SHORT, LONG), 0, SETS).orElseThrow();
    assertThat(equal.reached()).isTrue();
    assertThat(equal.setting()).isEqualTo(LONG.name());
    assertThat(equal.settingScores().overOneMillivolt()).isZero();
    assertThat(equal.timesSooner()).isCloseTo(199.0 / 159, within(1e-12));
  }

  @Test
  void whereTheFamilyHasNoneItIsHeldToTheFewestAndTold() {
    Row row = Row.of(LONG, SETS);
    EqualError equal = EqualError.of(row, of(SHORT), 0, SETS).orElseThrow();
    assertThat(equal.reached()).isFalse();
    assertThat(equal.setting()).isEqualTo(SHORT.name());
    assertThat(equal.settingScores().overOneMillivolt()).isEqualTo(0.5);
  }

  @Test
  void aFamilyThatNeverSettlesIsNoMatch() {
    Swept never = new Swept(SHORT, 1, 0, 0, 0, 0, 900);
    Family family = new Family("family", List.of(never), List.of(List.of(never)));
    assertThat(EqualError.of(Row.of(LONG, SETS), family, 0, SETS)).isEqualTo(Optional.empty());
  }
}
