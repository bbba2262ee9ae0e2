package org.restpoint.stability.rest;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.restpoint.stability.rest.Settling.Stage;

class AllocationTest {

  private static final int READINGS = 1_000_000;

  /** One object a reading would be 16 000 000 bytes; this leaves room for the thread's own. */
  private static final long A_FEW_BYTES = 10_000;

  /** Readings that saw up and down, further than the tolerance in any two of them. */
  private static int waiting(Settling settling, long from) {
    int waiting = 0;
    for (int i = 0; i < READINGS; i++) {
      double millivolts = (i & 1) == 0 ? i % 97 : 200 + i % 89;
      if (settling.accept((from + i) * 1_000_000, millivolts) == Stage.WAITING) {
        waiting++;
      }
    }
    return waiting;
  }

  private static RestRule spanning(int readings, Duration span) {
    return new ConsecutiveRule(readings, new Tolerance.ConcentrationPercent(1), span);
  }

  /** Readings a millisecond apart: 20 s hold more of them than there are places. */
  static List<RestRule> rules() {
    RestRule consecutive = new ConsecutiveRule(10, 0.1);
    RestRule drift = new DriftRule(0.2, Duration.ofSeconds(20));
    return List.of(
        new ConsecutiveRule(2, 0.1),
        consecutive,
        new ConsecutiveRule(300, 0.1),
        spanning(10, Duration.ofMillis(200)),
        spanning(300, Duration.ofSeconds(20)),
        new DriftRule(0.2, Duration.ofMillis(500)),
        drift,
        new ForecastRule(1),
        new AllOf(List.of(consecutive, drift)),
        new AnyOf(List.of(drift, new AllOf(List.of(consecutive, drift)))));
  }

  @ParameterizedTest
  @MethodSource("rules")
  void takingAMillionReadingsAllocatesNothing(RestRule rule) {
    SettleLimits limits = new SettleLimits(Duration.ZERO, Duration.ofDays(1));
    Settling settling = new Settling(rule.detector(59.16), limits, 0);
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long thread = Thread.currentThread().getId();
    assertThat(waiting(settling, 0)).isEqualTo(READINGS);
    long before = threads.getThreadAllocatedBytes(thread);
    int waited = waiting(settling, READINGS);
    long allocated = threads.getThreadAllocatedBytes(thread) - before;
    assertThat(waited).isEqualTo(READINGS);
    assertThat(settling.taken()).isEqualTo(2L * READINGS);
    assertThat(allocated).isLessThan(A_FEW_BYTES);
  }

  /** As its documentation says, with a little for the headers of its objects. */
  @Test
  void aForecastTakesItsMemoryAtTheBeginningAndNoMoreThanItSays() {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long thread = Thread.currentThread().getId();
    ForecastRule rule = new ForecastRule(1);
    List<RestDetector> detectors = new ArrayList<>(101);
    detectors.add(rule.detector(59.16));
    long before = threads.getThreadAllocatedBytes(thread);
    for (int i = 0; i < 100; i++) {
      detectors.add(rule.detector(59.16));
    }
    long each = (threads.getThreadAllocatedBytes(thread) - before) / 100;
    assertThat(each).isBetween(60_000L, 64_000L);
    assertThat(detectors).hasSize(101);
  }
}
