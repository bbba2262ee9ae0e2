package org.restpoint.acquisition.metrics;

import io.micrometer.core.instrument.FunctionCounter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.prometheusmetrics.PrometheusConfig;
import io.micrometer.prometheusmetrics.PrometheusMeterRegistry;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.DoubleSupplier;
import java.util.function.Supplier;
import org.restpoint.acquisition.event.Result;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth;

/**
 * What the service counts. The only tag is {@code probe} and its only values are probe names; what
 * would be another tag is another name.
 *
 * <ul>
 *   <li>{@code restpoint_link_received_total} = {@code …_accepted_total} + {@code …_rejected_total}
 *       + {@code …_dropped_total}, in every scrape; {@code restpoint_link_up} is 1 or 0
 *   <li>{@code restpoint_results_settled_total}, {@code …_unsettled_total}, {@code …_refused_total}
 *   <li>{@code restpoint_calibrations_accepted_total}, {@code …_refused_total}
 *   <li>{@code restpoint_notices_total}, and of them {@code restpoint_link_losses_total} and {@code
 *       restpoint_link_silences_total}
 *   <li>{@code restpoint_settling_seconds_count}, {@code …_sum}, {@code …_max}
 *   <li>a few of the virtual machine: {@code jvm_…}, {@code process_uptime_seconds}
 * </ul>
 *
 * <p>Safe to call from any thread. Holds as much as there are probes, never more.
 */
public final class Metrics {

  /** The only tag. */
  static final String PROBE = "probe";

  private final PrometheusMeterRegistry registry =
      new PrometheusMeterRegistry(PrometheusConfig.DEFAULT);
  private final Set<String> names = new HashSet<>();
  private final List<LinkMeters> links = new CopyOnWriteArrayList<>();
  private final List<DoubleSupplier> totals = new CopyOnWriteArrayList<>();
  private final Map<String, ProbeMeters> probes = new ConcurrentHashMap<>();

  /** With the virtual machine's own figures and nothing else yet. */
  public Metrics() {
    JvmMeters.register(registry);
  }

  /**
   * Shows a probe's link from now on, and the probe's own counters at zero.
   *
   * @param probe the probe's name
   * @param counts what the link has seen; called once a scrape
   * @param health how the link is; called once a scrape
   * @throws IllegalArgumentException when the probe has a link already
   */
  public void link(String probe, Supplier<LinkCounts> counts, Supplier<LinkHealth> health) {
    take("link of probe " + probe);
    links.add(new LinkMeters(registry, probe, counts, health));
    of(probe);
  }

  /** Counts a result by its outcome. */
  public void result(String probe, Result.Outcome outcome) {
    of(probe).result(outcome);
  }

  /** Counts a calibration, in force or refused. */
  public void calibration(String probe, boolean accepted) {
    of(probe).calibration(accepted);
  }

  /** Counts a notice; one that tells a loss or a silence counts as that too. */
  public void notice(String probe, String code) {
    of(probe).notice(code);
  }

  /** Takes down how long a reading took to come to rest, in seconds. */
  public void settled(String probe, double elapsedSeconds) {
    of(probe).settled(elapsedSeconds);
  }

  /**
   * Shows a figure that rises and falls, such as messages that wait.
   *
   * @param name words between dots, the unit last where there is one: {@code
   *     restpoint.outbox.waiting}
   * @param description one sentence without a full stop
   * @param value the figure; called once a scrape, must not block
   * @throws IllegalArgumentException when the name is taken
   */
  public void gauge(String name, String description, DoubleSupplier value) {
    take(name);
    Gauge.builder(name, value::getAsDouble).description(description).register(registry);
  }

  /**
   * Shows a figure that only rises, such as commits; it is shown with {@code _total}.
   *
   * @param name words between dots: {@code restpoint.journal.commits}
   * @param description one sentence without a full stop
   * @param total the figure since the start; called once a scrape, must not block
   * @throws IllegalArgumentException when the name is taken
   */
  public void counter(String name, String description, DoubleSupplier total) {
    take(name);
    // The registry holds its subject weakly; this list keeps it alive.
    totals.add(total);
    FunctionCounter.builder(name, total, DoubleSupplier::getAsDouble)
        .description(description)
        .register(registry);
  }

  /**
   * All meters at this moment.
   *
   * @param acceptHeader the caller's Accept header; OpenMetrics when it asks for {@code
   *     application/openmetrics-text}, else Prometheus text
   */
  public synchronized Scrape scrape(Optional<String> acceptHeader) {
    links.forEach(LinkMeters::refresh);
    String format = Scrape.formatFor(acceptHeader);
    return new Scrape(format, registry.scrape(format));
  }

  private ProbeMeters of(String probe) {
    return probes.computeIfAbsent(probe, name -> new ProbeMeters(registry, name));
  }

  private synchronized void take(String name) {
    if (!names.add(name)) {
      throw new IllegalArgumentException("metrics: there is a " + name + " already");
    }
  }
}
