package org.restpoint.stability.health;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Times and values are invented. */
class HistoryTest {

  private static final Instant BEGINNING = Instant.parse("2026-03-01T08:00:00Z");

  private static Observation seen(int day, Quantity quantity, String standard) {
    return new Observation(BEGINNING.plus(Duration.ofDays(day)), quantity, standard, day, 0);
  }

  private static Series series(int observations) {
    Series series = Series.of(seen(0, Quantity.SLOPE_PERCENT, "low, high"));
    for (int day = 1; day < observations; day++) {
      series = series.accept(seen(day, Quantity.SLOPE_PERCENT, "low, high"));
    }
    return series;
  }

  @Test
  void onlyTheSameStandardIsComparedButForTheSlope() {
    History history = History.empty();
    history = history.accept(seen(0, Quantity.NOISE_MILLIVOLTS, "mid"));
    history = history.accept(seen(1, Quantity.NOISE_MILLIVOLTS, "mid"));
    history = history.accept(seen(2, Quantity.NOISE_MILLIVOLTS, "high"));
    history = history.accept(seen(3, Quantity.RESPONSE_SECONDS, "mid"));
    history = history.accept(seen(4, Quantity.SLOPE_PERCENT, "low, high"));
    history = history.accept(seen(5, Quantity.SLOPE_PERCENT, "low, mid, high"));
    assertThat(history.series())
        .extracting(s -> s.observations().size())
        .containsExactly(2, 1, 1, 2);
    assertThat(history.like(seen(9, Quantity.NOISE_MILLIVOLTS, "high")).orElseThrow().latest())
        .isEqualTo(seen(2, Quantity.NOISE_MILLIVOLTS, "high"));
    assertThat(history.like(seen(9, Quantity.OFFSET_MILLIVOLTS, "high"))).isEmpty();
  }

  @Test
  void aFullSeriesKeepsItsBeginningsAndCountsWhatItDrops() {
    Series series = series(250);
    assertThat(series.observations()).hasSize(200);
    assertThat(series.dropped()).isEqualTo(50);
    assertThat(series.base()).hasSize(20).extracting(Observation::value).last().isEqualTo(19.0);
    assertThat(series.unbroken())
        .hasSize(180)
        .extracting(Observation::value)
        .first()
        .isEqualTo(70.0);
    assertThat(series.latest().value()).isEqualTo(249);
    assertThat(series(150).unbroken()).hasSize(150);
  }

  @Test
  void oneThatComesLateIsPutWhereItBelongsAndOneThatIsThereChangesNothing() {
    List<Observation> days = new ArrayList<>();
    for (int day = 0; day < 30; day++) {
      days.add(seen(day, Quantity.OFFSET_MILLIVOLTS, "mid"));
    }
    History inOrder = History.empty();
    for (Observation observation : days) {
      inOrder = inOrder.accept(observation);
    }
    Collections.shuffle(days, new Random(4));
    History shuffled = History.empty();
    for (Observation observation : days) {
      shuffled = shuffled.accept(observation).accept(observation);
    }
    assertThat(shuffled).isEqualTo(inOrder);
    assertThat(shuffled.held()).isEqualTo(30);
  }

  @Test
  void whatIsAcceptedIsHeldOrCountedAsDropped() {
    History history = History.empty();
    for (int i = 0; i < 1000; i++) {
      history = history.accept(seen(i, Quantity.OFFSET_MILLIVOLTS, "standard " + i % 80));
    }
    for (int i = 0; i < 500; i++) {
      history = history.accept(seen(1000 + i, Quantity.SLOPE_PERCENT, "low, high"));
    }
    assertThat(history.series()).hasSize(History.LARGEST);
    assertThat(history.held() + history.dropped()).isEqualTo(1500);
    assertThat(history.dropped()).isGreaterThan(300);
  }

  @Test
  void aHistoryWrittenOutAndTakenUpAgainIsTheSame() {
    History history = History.empty();
    for (int i = 0; i < 300; i++) {
      history = history.accept(seen(i, Quantity.OFFSET_MILLIVOLTS, "mid"));
    }
    List<Series> again = new ArrayList<>();
    for (Series series : history.series()) {
      again.add(new Series(new ArrayList<>(series.observations()), series.dropped()));
    }
    assertThat(new History(again, history.forgotten())).isEqualTo(history);
  }

  @Test
  void whatIsNoSeriesIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> new Series(List.of(), 0));
    Observation first = seen(0, Quantity.OFFSET_MILLIVOLTS, "mid");
    Observation second = seen(1, Quantity.OFFSET_MILLIVOLTS, "mid");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Series(List.of(second, first), 0))
        .withMessage("a series is in order of time");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Series(List.of(first, seen(1, Quantity.OFFSET_MILLIVOLTS, "low")), 0))
        .withMessage("a series is of one quantity in one standard");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> new Observation(BEGINNING, Quantity.OFFSET_MILLIVOLTS, "mid", Double.NaN, 0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Observation(BEGINNING, Quantity.OFFSET_MILLIVOLTS, "mid", 1, -1));
  }
}
