package org.restpoint.acquisition.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.link.LinkTally;

class BenchClockTest {

  private static final Instant START = Instant.parse("2026-04-02T08:00:00Z");

  private final LinkTally tally = new LinkTally();
  private final BenchClock clock = new BenchClock(START, Duration.ofSeconds(1));

  @Test
  void itStandsStillUntilItFollowsAnElectrode() {
    tally.offered(true);

    assertThat(clock.instant()).isEqualTo(START);
  }

  @Test
  void itIsNeverBehindAReadingNorAheadOfTheNext() {
    clock.follow(new Counting());
    for (int k = 0; k < 5; k++) {
      tally.offered(k != 3);
      Instant stamp = START.plusSeconds(k);
      assertThat(clock.instant()).isAfter(stamp).isBeforeOrEqualTo(stamp.plusSeconds(1));
    }
  }

  private final class Counting implements Link {

    @Override
    public void start() {}

    @Override
    public LinkHealth check() {
      return new LinkHealth(LinkHealth.Condition.READING, "", Optional.empty());
    }

    @Override
    public LinkCounts counts() {
      return tally.counts();
    }

    @Override
    public void close() {}
  }
}
