package org.restpoint.stability.rest.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ResponseHistoryTest {

  /** An exponential of 8 s and one of 128 s, on the scale of potentials. */
  private static final int FAST = 21;

  private static final int SLOW = 49;

  private static ResponseSeen seen(double millivolts, boolean rising, int curve) {
    List<Double> weights = new ArrayList<>(Collections.nCopies(Candidates.COUNT, 0.0));
    weights.set(curve, 1.0);
    return new ResponseSeen(millivolts, rising, 60, weights);
  }

  private static ResponseHistory after(int readings, int curve) {
    ResponseHistory history = ResponseHistory.empty();
    for (int i = 0; i < readings; i++) {
      history = history.with(seen(100, true, curve));
    }
    return history;
  }

  private static double sum(List<Double> weights) {
    return weights.stream().mapToDouble(it -> it).sum();
  }

  @Test
  void ofANewElectrodeNothingIsKnown() {
    assertThat(ResponseHistory.empty().prior()).isEqualTo(ResponsePrior.uninformed());
  }

  @Test
  void whatWasSeenBecomesLikelyAndItsNeighboursMoreSoThanOthers() {
    ResponsePrior.Level before = ResponsePrior.uninformed().levels().get(0);
    ResponsePrior.Level level = after(5, FAST).prior().levels().get(0);
    assertThat(level.rising().get(FAST)).isGreaterThan(10 * before.rising().get(FAST));
    assertThat(level.rising().get(FAST)).isGreaterThan(level.rising().get(FAST + 3));
    assertThat(level.rising().get(FAST + 3)).isGreaterThan(level.rising().get(SLOW));
    assertThat(level.rising().get(FAST + 3) / level.rising().get(FAST - 3))
        .isCloseTo(1, within(0.1));
  }

  /** 0.05 of the uninformed prior are always left. */
  @Test
  void everyCurveStaysPossibleAndLikelihoodsAddUpToOne() {
    List<Double> before = ResponsePrior.uninformed().levels().get(0).rising();
    for (ResponsePrior.Level level : after(40, FAST).prior().levels()) {
      for (List<Double> weights : List.of(level.rising(), level.falling())) {
        assertThat(sum(weights)).isCloseTo(1, within(1e-9));
        for (int i = 0; i < before.size(); i++) {
          assertThat(weights.get(i)).isGreaterThanOrEqualTo(0.05 * before.get(i));
        }
      }
    }
  }

  @Test
  void whatIsSeenInOneDirectionIsExpectedLessSurelyInTheOther() {
    ResponsePrior.Level level = after(5, FAST).prior().levels().get(0);
    double before = ResponsePrior.uninformed().levels().get(0).falling().get(FAST);
    assertThat(level.falling().get(FAST)).isBetween(2 * before, level.rising().get(FAST));
    ResponseHistory both = after(5, FAST);
    for (int i = 0; i < 5; i++) {
      both = both.with(seen(100, false, FAST + 7));
    }
    ResponsePrior.Level learnt = both.prior().levels().get(0);
    assertThat(learnt.rising().get(FAST)).isGreaterThan(2 * learnt.rising().get(FAST + 7));
    assertThat(learnt.falling().get(FAST + 7)).isGreaterThan(2 * learnt.falling().get(FAST));
  }

  /** Seen at 10 and 310 mV, the second an octave slower: half-way it is half an octave slower. */
  @Test
  void aLevelThatWasNotSeenIsKnownFromThoseBesideIt() {
    ResponseHistory history = ResponseHistory.empty();
    for (int i = 0; i < 8; i++) {
      history = history.with(seen(10, true, FAST)).with(seen(310, true, FAST + 7));
    }
    List<ResponsePrior.Level> levels = history.prior().levels();
    assertThat(levels).hasSize(10);
    assertThat(levels.get(9).upToMillivolts()).isInfinite();
    assertThat(likeliest(levels.get(0))).isBetween(FAST - 1, FAST + 1);
    assertThat(likeliest(levels.get(5))).isBetween(FAST + 3, FAST + 5);
    assertThat(likeliest(levels.get(9))).isBetween(FAST + 6, FAST + 8);
  }

  private static int likeliest(ResponsePrior.Level level) {
    return level.rising().indexOf(Collections.max(level.rising()));
  }

  /** As a reading does that decided so early that it fits what was known, and nothing else. */
  @Test
  void aReadingThatOnlyRepeatsWhatWasKnownTeachesNoTimes() {
    ResponseHistory history = after(3, FAST);
    List<Double> known = history.prior().levels().get(0).rising();
    double sum = sum(known);
    ResponseHistory next =
        history.with(new ResponseSeen(100, true, 60, known.stream().map(it -> it / sum).toList()));
    for (int kind = 0; kind < CurveKinds.COUNT; kind++) {
      assertThat(next.kinds().get(kind).mean()).isEqualTo(history.kinds().get(kind).mean());
    }
    assertThat(next.surpriseNepers()).isLessThan(1e-9);
  }

  @Test
  void moreReadingsLetAnElectrodeBeForeseenFromFurtherAway() {
    assertThat(ResponsePrior.uninformed().unforeseen()).isEqualTo(0.07);
    assertThat(after(1, FAST).prior().unforeseen()).isCloseTo(0.067, within(0.001));
    assertThat(after(40, FAST).prior().unforeseen()).isCloseTo(0.0405, within(0.001));
  }

  /** A pair of exponentials, whose freedom costs it a neper in each reading, stays as likely. */
  @Test
  void aKindThatExplainsNearlyAsWellIsNotHeldToBeWorse() {
    ResponseHistory history = ResponseHistory.empty();
    int pair = Candidates.FIRST_PAIR + 20;
    for (int i = 0; i < 10; i++) {
      List<Double> known = history.prior().levels().get(0).rising();
      List<Double> weights = new ArrayList<>(Collections.nCopies(Candidates.COUNT, 0.0));
      double one = known.get(SLOW);
      double two = known.get(pair) * Math.exp(-1);
      weights.set(SLOW, one / (one + two));
      weights.set(pair, two / (one + two));
      history = history.with(new ResponseSeen(100, true, 60, weights));
    }
    assertThat(history.kinds().get(CurveKinds.of(SLOW)).likelihoodNepers()).isZero();
    assertThat(history.kinds().get(CurveKinds.of(pair)).likelihoodNepers()).isGreaterThan(-3);
    assertThat(history.kinds().get(CurveKinds.of(Candidates.FIRST_ON_ACTIVITIES)))
        .extracting(KindTimes::likelihoodNepers)
        .satisfies(it -> assertThat(it).isLessThan(-30));
  }

  @Test
  void oneOddReadingForgetsNothingAndAFewInARowForgetAll() {
    ResponseHistory history = after(20, FAST);
    assertThat(history.surpriseNepers()).isZero();
    ResponseHistory odd = history.with(seen(100, true, SLOW));
    assertThat(odd.changes()).isZero();
    assertThat(odd.surpriseNepers()).isBetween(2.0, 3.5);
    assertThat(likeliest(odd.prior().levels().get(0))).isEqualTo(FAST);
    assertThat(odd.with(seen(100, true, FAST)).surpriseNepers()).isLessThan(odd.surpriseNepers());
    ResponseHistory changed = odd.with(seen(100, true, SLOW)).with(seen(100, true, SLOW));
    assertThat(changed.changes()).isEqualTo(1);
    assertThat(changed.readings()).isBetween(1L, 2L);
    assertThat(likeliest(changed.prior().levels().get(0))).isEqualTo(SLOW);
  }

  /** What was known before is taken out of the reading that told the change. */
  @Test
  void aChangedElectrodeBeginsWithTheReadingAsIfNothingHadBeenKnown() {
    ResponseHistory known = after(20, FAST);
    ResponseHistory wary = new ResponseHistory(known.kinds(), 100, 100, 4.9, known.readings(), 0);
    ResponseHistory changed = wary.with(seen(100, true, SLOW));
    assertThat(changed.changes()).isEqualTo(1);
    assertThat(changed.readings()).isEqualTo(1);
    ResponseHistory fresh = ResponseHistory.empty().with(seen(100, true, SLOW));
    int kind = CurveKinds.of(SLOW);
    assertThat(changed.kinds().get(kind).mean().get(0))
        .isCloseTo(fresh.kinds().get(kind).mean().get(0), within(1e-9));
  }

  @Test
  void anElectrodeThatWasReplacedIsANewOne() {
    ResponseHistory replaced = after(20, FAST).replaced();
    assertThat(replaced.prior()).isEqualTo(ResponsePrior.uninformed());
    assertThat(replaced.readings()).isZero();
    assertThat(replaced.changes()).isZero();
  }

  @Test
  void itStaysFiniteAndBoundedWhateverIsRead() {
    Random random = new Random(7);
    ResponseHistory history = ResponseHistory.empty();
    for (int i = 0; i < 400; i++) {
      int curve = random.nextInt(Candidates.COUNT);
      double millivolts = 1e4 * random.nextGaussian();
      history = history.with(seen(millivolts, random.nextBoolean(), curve));
      assertThat(history.kinds()).hasSize(CurveKinds.COUNT);
      assertThat(history.surpriseNepers()).isBetween(0.0, 5.0);
      assertThat(history.prior().levels()).hasSizeLessThanOrEqualTo(12);
    }
    assertThat(after(400, FAST).prior().levels()).hasSize(1);
  }

  /** As one who writes it down would: by the components of records, down to numbers and lists. */
  @Test
  void itIsMadeOfNumbersInRecordsAndListsAlone() throws ReflectiveOperationException {
    ResponseHistory history = after(3, FAST).with(seen(-200, false, SLOW));
    isWritable(history);
    List<KindTimes> kinds = new ArrayList<>();
    for (KindTimes kind : history.kinds()) {
      kinds.add(
          new KindTimes(
              kind.likelihoodNepers(), List.copyOf(kind.mean()), List.copyOf(kind.covariance())));
    }
    ResponseHistory again =
        new ResponseHistory(
            kinds,
            history.lowestMillivolts(),
            history.highestMillivolts(),
            history.surpriseNepers(),
            history.readings(),
            history.changes());
    assertThat(again).isEqualTo(history).hasSameHashCodeAs(history);
    assertThat(again.prior()).isEqualTo(history.prior());
  }

  private static void isWritable(Object value) throws ReflectiveOperationException {
    if (value instanceof Double number) {
      assertThat(number).isFinite();
    } else if (value instanceof List<?> list) {
      for (Object item : list) {
        isWritable(item);
      }
    } else if (value.getClass().isRecord()) {
      for (RecordComponent component : value.getClass().getRecordComponents()) {
        isWritable(component.getAccessor().invoke(value));
      }
    } else {
      assertThat(value).isInstanceOfAny(Integer.class, Long.class, Boolean.class);
    }
  }

  @Test
  void everyCurveIsOfAKindAndEveryKindHasARow() {
    double uninformed = 0;
    for (int kind = 0; kind < CurveKinds.COUNT; kind++) {
      uninformed += CurveKinds.uninformed(kind);
      assertThat(CurveKinds.variance(kind)).isPositive();
      assertThat(CurveKinds.roundingVariance(kind)).isPositive();
    }
    assertThat(CurveKinds.COUNT).isEqualTo(18);
    assertThat(uninformed).isCloseTo(1, within(1e-12));
    assertThat(CurveKinds.lnSeconds(FAST)).isCloseTo(Math.log(8), within(1e-9));
    assertThat(CurveKinds.lnSeconds(Candidates.FIRST_ON_ACTIVITIES + SLOW))
        .isCloseTo(Math.log(128), within(1e-9));
    Pairs pairs = new Pairs();
    for (int pair = 0; pair < Pairs.COUNT; pair++) {
      assertThat(CurveKinds.lnSeconds(Candidates.FIRST_PAIR + pair))
          .isCloseTo(pairs.slow(pair) * Math.log(2) / 7, within(1e-9));
    }
    assertThat(CurveKinds.of(Candidates.COUNT - 1)).isEqualTo(CurveKinds.COUNT - 1);
  }

  @Test
  void whatCannotBeAHistoryIsRefused() {
    List<Double> none = Collections.nCopies(Candidates.COUNT, 0.0);
    List<KindTimes> kinds = after(1, FAST).kinds();
    assertThatThrownBy(() -> new ResponseHistory(List.of(), 0, 0, 0, 1, 0))
        .hasMessageContaining("18 kinds");
    assertThatThrownBy(() -> new ResponseHistory(kinds, 0, 0, 0, 0, 0))
        .hasMessageContaining("not of 18");
    assertThatThrownBy(() -> new ResponseHistory(kinds, 1, 0, 0, 1, 0))
        .hasMessageContaining("from the lowest to the highest");
    assertThatThrownBy(() -> new ResponseHistory(List.of(), 0, 0, Double.NaN, 0, 0))
        .hasMessageContaining("surprise");
    assertThatThrownBy(() -> new ResponseHistory(kinds, 0, 0, 0, 1, -1))
        .hasMessageContaining("counted from 0");
    List<Double> mean = kinds.get(0).mean();
    List<Double> covariance = kinds.get(0).covariance();
    assertThatThrownBy(() -> new KindTimes(0, mean, mean)).hasMessageContaining("6 of a");
    assertThatThrownBy(() -> new KindTimes(1, mean, covariance)).hasMessageContaining("1.0");
    assertThatThrownBy(() -> new KindTimes(0, List.of(1.0, Double.NaN, 0.0), covariance))
        .hasMessageContaining("NaN");
    ResponseSeen nowhere = new ResponseSeen(Double.NaN, true, 60, none);
    assertThatThrownBy(() -> ResponseHistory.empty().with(nowhere))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
