package org.restpoint.acquisition.metrics;

import io.micrometer.core.instrument.FunctionCounter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth;

/**
 * The meters of one link. They show one reading of its counts, taken by {@link #refresh()}, so that
 * {@code received = accepted + rejected + dropped} holds in every scrape, however busy the link is.
 */
final class LinkMeters {

  private final Supplier<LinkCounts> source;
  private volatile LinkCounts latest = new LinkCounts(0, 0, 0, 0);

  LinkMeters(
      MeterRegistry registry,
      String probe,
      Supplier<LinkCounts> counts,
      Supplier<LinkHealth> health) {
    source = counts;
    counter(
        registry,
        probe,
        "received",
        "Lines, messages or rows that arrived: accepted + rejected + dropped",
        LinkCounts::received);
    counter(registry, probe, "accepted", "Readings handed over", LinkCounts::accepted);
    counter(registry, probe, "rejected", "Arrivals that are not a reading", LinkCounts::rejected);
    counter(
        registry, probe, "dropped", "Readings that found the hand-over full", LinkCounts::dropped);
    Gauge.builder("restpoint.link.up", () -> up(health.get()))
        .description("1 while the link is open and readings arrive, else 0")
        .tag(Metrics.PROBE, probe)
        .register(registry);
  }

  /** Reads the link's counts once for all its counters. */
  void refresh() {
    latest = source.get();
  }

  private static int up(LinkHealth health) {
    return health.condition() == LinkHealth.Condition.READING ? 1 : 0;
  }

  private void counter(
      MeterRegistry registry,
      String probe,
      String name,
      String description,
      ToDoubleFunction<LinkCounts> count) {
    FunctionCounter.builder(
            "restpoint.link." + name, this, meters -> count.applyAsDouble(meters.latest))
        .description(description)
        .tag(Metrics.PROBE, probe)
        .register(registry);
  }
}
