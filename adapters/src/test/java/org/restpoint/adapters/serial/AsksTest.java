package org.restpoint.adapters.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

class AsksTest {

  /** Close to its turn, as a monotonic clock may be. */
  private static final long START = Long.MAX_VALUE - 250;

  private final Asks asks = new Asks(START);

  private List<String> asked(List<String> polls, long... after) {
    return LongStream.of(after)
        .mapToObj(nanos -> asks.due(polls, Duration.ofNanos(1_000), START + nanos).orElse("-"))
        .toList();
  }

  @Test
  void oneThingIsAskedAtOnceAndThenAtTheInterval() {
    assertThat(asked(List.of("A"), 0, 1, 999, 1_000, 1_999, 2_000))
        .containsExactly("A", "-", "-", "A", "-", "A");
  }

  @Test
  void severalAreAskedInTurnEachOnceInTheInterval() {
    assertThat(asked(List.of("A", "B"), 0, 499, 500, 999, 1_000, 1_500))
        .containsExactly("A", "-", "B", "-", "A", "B");
  }

  @Test
  void whatWasMissedIsNotMadeUpFor() {
    assertThat(asked(List.of("A", "B"), 0, 7_400, 7_401, 7_500))
        .containsExactly("A", "B", "-", "A");
  }

  @Test
  void nothingIsAskedWhereThereIsNothingToAsk() {
    assertThat(asked(List.of(), 0, 5_000)).containsExactly("-", "-");
  }
}
