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

  private static double total(ResponseHistory history) {
    return history.groups().stream().mapToDouble(CurveCounts::total).sum();
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
    assertThat(level.rising().get(FAST + 3)).isCloseTo(level.rising().get(FAST - 3), within(1e-12));
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
  void aDirectionLearnsMostOfItselfAndALittleOfTheOther() {
    ResponsePrior.Level level = after(5, FAST).prior().levels().get(0);
    double before = ResponsePrior.uninformed().levels().get(0).falling().get(FAST);
    assertThat(level.falling().get(FAST)).isBetween(before, level.rising().get(FAST));
    ResponseHistory both = after(5, FAST);
    for (int i = 0; i < 5; i++) {
      both = both.with(seen(100, false, SLOW));
    }
    ResponsePrior.Level learnt = both.prior().levels().get(0);
    assertThat(learnt.rising().get(FAST)).isGreaterThan(5 * learnt.rising().get(SLOW));
    assertThat(learnt.falling().get(SLOW)).isGreaterThan(5 * learnt.falling().get(FAST));
  }

  @Test
  void aLevelLearnsMostOfItselfAndLessOfLevelsFurtherOff() {
    ResponseHistory history = ResponseHistory.empty();
    for (int i = 0; i < 4; i++) {
      history = history.with(seen(10, true, FAST)).with(seen(310, true, SLOW));
    }
    List<ResponsePrior.Level> levels = history.prior().levels();
    assertThat(levels)
        .extracting(ResponsePrior.Level::upToMillivolts)
        .containsExactly(180.0, Double.POSITIVE_INFINITY);
    assertThat(levels.get(0).rising().get(FAST)).isGreaterThan(levels.get(0).rising().get(SLOW));
    assertThat(levels.get(1).rising().get(SLOW)).isGreaterThan(levels.get(1).rising().get(FAST));
  }

  /** A first reading, of which nothing was known, counts 1 − ε = 0.95. */
  @Test
  void aReadingThirtyReadingsAgoCountsHalf() {
    ResponseHistory history = ResponseHistory.empty().with(seen(100, true, FAST));
    for (int i = 0; i < 30; i++) {
      history = history.with(seen(100, false, FAST));
    }
    CurveCounts first = history.groups().get(0);
    assertThat(first.rising()).isTrue();
    assertThat(first.total()).isCloseTo(0.475, within(0.002));
    assertThat(history.readings()).isEqualTo(31);
  }

  @Test
  void oneOddReadingForgetsNothingAndAFewInARowForgetAll() {
    ResponseHistory history = after(20, FAST);
    assertThat(history.surpriseNepers()).isZero();
    ResponseHistory odd = history.with(seen(100, true, SLOW));
    assertThat(odd.changes()).isZero();
    assertThat(odd.surpriseNepers()).isBetween(2.0, 3.0);
    assertThat(odd.groups().get(0).counts().get(SLOW)).isLessThan(0.2);
    assertThat(odd.with(seen(100, true, FAST)).surpriseNepers()).isLessThan(odd.surpriseNepers());
    ResponseHistory changed = odd.with(seen(100, true, SLOW)).with(seen(100, true, SLOW));
    assertThat(changed.changes()).isEqualTo(1);
    assertThat(changed.readings()).isBetween(1L, 2L);
    assertThat(changed.groups().get(0).counts().get(FAST)).isZero();
  }

  /** Of a reading that leaves two curves open, the evidence for what was learnt is taken out. */
  @Test
  void aChangedElectrodeBeginsWithTheReadingAsIfNothingHadBeenKnown() {
    ResponseHistory known = after(20, FAST);
    ResponseHistory wary = new ResponseHistory(known.groups(), 4.5, 20, 0);
    List<Double> prior = known.prior().levels().get(0).rising();
    double[] uninformed = Candidates.uninformed();
    double slow = 0.9 * prior.get(SLOW) / uninformed[SLOW];
    double slower = 0.1 * prior.get(SLOW + 7) / uninformed[SLOW + 7];
    List<Double> weights = new ArrayList<>(Collections.nCopies(Candidates.COUNT, 0.0));
    weights.set(SLOW, slow / (slow + slower));
    weights.set(SLOW + 7, slower / (slow + slower));
    ResponseHistory changed = wary.with(new ResponseSeen(100, true, 60, weights));
    assertThat(changed.changes()).isEqualTo(1);
    assertThat(changed.groups().get(0).counts().get(SLOW)).isCloseTo(0.9, within(1e-4));
    assertThat(changed.groups().get(0).counts().get(SLOW + 7)).isCloseTo(0.1, within(1e-4));
  }

  @Test
  void itIsBoundedWhateverIsRead() {
    Random random = new Random(7);
    ResponseHistory history = ResponseHistory.empty();
    for (int i = 0; i < 400; i++) {
      int curve = random.nextInt(Candidates.COUNT);
      double millivolts = 1e4 * random.nextGaussian();
      history = history.with(seen(millivolts, random.nextBoolean(), curve));
      assertThat(history.groups()).hasSizeLessThanOrEqualTo(ResponseHistory.MOST_GROUPS);
      assertThat(history.surpriseNepers()).isBetween(0.0, 5.0);
    }
    ResponseHistory steady = after(400, FAST);
    assertThat(total(steady)).isBetween(40.0, 44.0);
  }

  /** As one who writes it down would: by the components of records, down to numbers and lists. */
  @Test
  void itIsMadeOfNumbersInRecordsAndListsAlone() throws ReflectiveOperationException {
    ResponseHistory history = after(3, FAST).with(seen(-200, false, SLOW));
    isWritable(history);
    List<CurveCounts> groups = new ArrayList<>();
    for (CurveCounts group : history.groups()) {
      groups.add(new CurveCounts(group.band(), group.rising(), List.copyOf(group.counts())));
    }
    ResponseHistory again =
        new ResponseHistory(
            groups, history.surpriseNepers(), history.readings(), history.changes());
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
  void smoothingKeepsTheSumAndTheKind() {
    for (int curve = 0; curve < Candidates.COUNT; curve++) {
      double[] one = new double[Candidates.COUNT];
      one[curve] = 1;
      double[] smooth = Neighbours.smooth(one);
      double inPairs = 0;
      double all = 0;
      for (int i = 0; i < smooth.length; i++) {
        all += smooth[i];
        inPairs += i >= Candidates.FIRST_PAIR ? smooth[i] : 0;
      }
      assertThat(all).isCloseTo(1, within(1e-12));
      assertThat(inPairs).isCloseTo(curve >= Candidates.FIRST_PAIR ? 1 : 0, within(1e-12));
      assertThat(smooth[curve]).isPositive();
    }
  }

  @Test
  void whatCannotBeAHistoryIsRefused() {
    List<Double> none = Collections.nCopies(Candidates.COUNT, 0.0);
    CurveCounts group = new CurveCounts(1, true, none);
    assertThatThrownBy(() -> new ResponseHistory(List.of(group, group), 0, 0, 0))
        .hasMessageContaining("one a direction and band");
    assertThatThrownBy(() -> new ResponseHistory(List.of(), Double.NaN, 0, 0))
        .hasMessageContaining("surprise");
    assertThatThrownBy(() -> new ResponseHistory(List.of(), 0, -1, 0))
        .hasMessageContaining("counted from 0");
    assertThatThrownBy(() -> new CurveCounts(1, true, List.of(1.0)))
        .hasMessageContaining("counts are of 520 response curves, not 1");
    assertThatThrownBy(() -> new CurveCounts(101, true, none)).hasMessageContaining("101");
    assertThatThrownBy(() -> new CurveCounts(1, true, Collections.nCopies(520, -1.0)))
        .hasMessageContaining("-1.0");
    ResponseSeen nowhere = new ResponseSeen(Double.NaN, true, 60, none);
    assertThatThrownBy(() -> ResponseHistory.empty().with(nowhere))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
