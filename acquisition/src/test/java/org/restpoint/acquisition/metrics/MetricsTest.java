package org.restpoint.acquisition.metrics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.DoubleSupplier;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Result;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkTally;

class MetricsTest {

  private final Metrics metrics = new Metrics();

  @Test
  void aLinksCountersAddUpInAScrape() {
    LinkTally tally = new LinkTally();
    metrics.link("no3-a", tally::counts, () -> health(Condition.READING));
    tally.offered(true);
    tally.offered(true);
    tally.offered(false);
    tally.rejected();

    assertThat(text())
        .contains("restpoint_link_received_total{probe=\"no3-a\"} 4.0")
        .contains("restpoint_link_accepted_total{probe=\"no3-a\"} 2.0")
        .contains("restpoint_link_rejected_total{probe=\"no3-a\"} 1.0")
        .contains("restpoint_link_dropped_total{probe=\"no3-a\"} 1.0")
        .contains("restpoint_link_up{probe=\"no3-a\"} 1.0");
  }

  @Test
  void aLinksCountersAddUpThoughItCountsOnDuringTheScrape() {
    AtomicLong calls = new AtomicLong();
    metrics.link(
        "no3-a",
        () -> {
          long call = calls.incrementAndGet();
          return new LinkCounts(10 * call, 7 * call, 2 * call, call);
        },
        () -> health(Condition.READING));

    for (int scrape = 1; scrape <= 3; scrape++) {
      String text = text();
      assertThat(value(text, "restpoint_link_received_total{probe=\"no3-a\"}"))
          .isEqualTo(
              value(text, "restpoint_link_accepted_total{probe=\"no3-a\"}")
                  + value(text, "restpoint_link_rejected_total{probe=\"no3-a\"}")
                  + value(text, "restpoint_link_dropped_total{probe=\"no3-a\"}"))
          .isEqualTo(10.0 * scrape);
    }
  }

  @Test
  void aLinkIsUpOnlyWhileReadingsArrive() {
    for (Condition condition : Condition.values()) {
      Metrics fresh = new Metrics();
      fresh.link("p", () -> new LinkCounts(0, 0, 0, 0), () -> health(condition));
      assertThat(value(fresh.scrape(Optional.empty()).text(), "restpoint_link_up{probe=\"p\"}"))
          .as(condition.name())
          .isEqualTo(condition == Condition.READING ? 1 : 0);
    }
  }

  @Test
  void aProbesOwnCountersStandAtZeroFromTheFirst() {
    link("no3-a");

    assertThat(text())
        .contains("restpoint_results_settled_total{probe=\"no3-a\"} 0.0")
        .contains("restpoint_results_unsettled_total{probe=\"no3-a\"} 0.0")
        .contains("restpoint_results_refused_total{probe=\"no3-a\"} 0.0")
        .contains("restpoint_calibrations_accepted_total{probe=\"no3-a\"} 0.0")
        .contains("restpoint_calibrations_refused_total{probe=\"no3-a\"} 0.0")
        .contains("restpoint_notices_total{probe=\"no3-a\"} 0.0")
        .contains("restpoint_settling_seconds_count{probe=\"no3-a\"} 0");
  }

  @Test
  void eachOutcomeHasACounterOfItsOwn() {
    link("a");
    link("b");
    metrics.result("a", Result.Outcome.SETTLED);
    metrics.result("a", Result.Outcome.SETTLED);
    metrics.result("a", Result.Outcome.UNSETTLED);
    metrics.result("b", Result.Outcome.REFUSED);
    metrics.calibration("a", true);
    metrics.calibration("b", false);
    metrics.notice("b", "slope-low");
    metrics.notice("a", "port-lost");
    metrics.notice("a", "no-data");
    metrics.notice("a", "no-data");
    metrics.settled("a", 21.5);
    metrics.settled("a", 40);

    assertThat(text())
        .contains("restpoint_results_settled_total{probe=\"a\"} 2.0")
        .contains("restpoint_results_unsettled_total{probe=\"a\"} 1.0")
        .contains("restpoint_results_refused_total{probe=\"a\"} 0.0")
        .contains("restpoint_results_refused_total{probe=\"b\"} 1.0")
        .contains("restpoint_calibrations_accepted_total{probe=\"a\"} 1.0")
        .contains("restpoint_calibrations_refused_total{probe=\"b\"} 1.0")
        .contains("restpoint_notices_total{probe=\"a\"} 3.0")
        .contains("restpoint_notices_total{probe=\"b\"} 1.0")
        .contains("restpoint_link_losses_total{probe=\"a\"} 1.0")
        .contains("restpoint_link_silences_total{probe=\"a\"} 2.0")
        .contains("restpoint_link_losses_total{probe=\"b\"} 0.0")
        .contains("restpoint_settling_seconds_count{probe=\"a\"} 2")
        .contains("restpoint_settling_seconds_sum{probe=\"a\"} 61.5")
        .contains("restpoint_settling_seconds_max{probe=\"a\"} 40.0");
  }

  @Test
  void figuresOfTheServiceAreReadAtTheScrape() {
    AtomicLong waiting = new AtomicLong(3);
    AtomicLong commits = new AtomicLong(8);
    metrics.gauge("restpoint.outbox.waiting", "Messages that wait for the broker", waiting::get);
    metrics.counter("restpoint.journal.commits", "Commits to the journal", commits::get);
    waiting.set(5);
    commits.set(9);

    assertThat(text())
        .contains("# HELP restpoint_outbox_waiting Messages that wait for the broker")
        .contains("# TYPE restpoint_outbox_waiting gauge")
        .contains("restpoint_outbox_waiting 5.0")
        .contains("# TYPE restpoint_journal_commits_total counter")
        .contains("restpoint_journal_commits_total 9.0");
  }

  @Test
  void aFigureOutlivesACollectionOfGarbage() {
    metrics.counter("restpoint.journal.commits", "Commits", counting());
    metrics.gauge("restpoint.outbox.waiting", "Waiting", counting());
    link("a");
    System.gc();

    assertThat(text())
        .contains("restpoint_journal_commits_total 1.0")
        .contains("restpoint_outbox_waiting 1.0")
        .contains("restpoint_link_received_total{probe=\"a\"} 0.0");
  }

  @Test
  void theProbeIsTheOnlyTag() {
    link("no3-a");
    metrics.gauge("restpoint.outbox.waiting", "Waiting", () -> 0);

    assertThat(text().lines().filter(line -> line.contains("{")))
        .isNotEmpty()
        .allMatch(line -> line.contains("{probe=\"no3-a\"}"));
  }

  @Test
  void theVirtualMachineShowsAFewFigures() {
    assertThat(text())
        .contains(
            "jvm_heap_used_bytes ",
            "jvm_heap_max_bytes ",
            "jvm_nonheap_used_bytes ",
            "jvm_threads ",
            "jvm_gc_collections_total ",
            "jvm_gc_seconds_total ",
            "process_uptime_seconds ");
  }

  @Test
  void aNameIsGivenOnce() {
    link("no3-a");
    metrics.gauge("restpoint.outbox.waiting", "Waiting", () -> 0);

    assertThatThrownBy(() -> link("no3-a"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("metrics: there is a link of probe no3-a already");
    assertThatThrownBy(() -> metrics.counter("restpoint.outbox.waiting", "Waiting", () -> 0))
        .hasMessage("metrics: there is a restpoint.outbox.waiting already");
  }

  @Test
  void openMetricsIsGivenToWhoAsksForIt() {
    assertThat(format("application/openmetrics-text"))
        .isEqualTo(format("text/html;q=0.9, Application/OpenMetrics-Text ; version=1.0.0;q=0.5"))
        .isEqualTo("application/openmetrics-text; version=1.0.0; charset=utf-8");
    assertThat(metrics.scrape(Optional.of("application/openmetrics-text")).text())
        .endsWith("# EOF\n");
  }

  @Test
  void everybodyElseIsGivenPrometheusText() {
    String prometheus = "text/plain; version=0.0.4; charset=utf-8";
    assertThat(metrics.scrape(Optional.empty()).contentType()).isEqualTo(prometheus);
    assertThat(format("")).isEqualTo(prometheus);
    assertThat(format("*/*")).isEqualTo(prometheus);
    assertThat(format(";,;;q,")).isEqualTo(prometheus);
    assertThat(format("application/openmetrics-textual")).isEqualTo(prometheus);
    assertThat(format("application/openmetrics-text; q=0.0")).isEqualTo(prometheus);
    assertThat(text()).doesNotContain("# EOF");
  }

  private static DoubleSupplier counting() {
    AtomicLong count = new AtomicLong();
    return count::incrementAndGet;
  }

  private void link(String probe) {
    metrics.link(probe, () -> new LinkCounts(0, 0, 0, 0), () -> health(Condition.READING));
  }

  private static LinkHealth health(Condition condition) {
    return new LinkHealth(condition, "", Optional.of(Instant.EPOCH));
  }

  private String format(String accept) {
    return metrics.scrape(Optional.of(accept)).contentType();
  }

  private String text() {
    return metrics.scrape(Optional.empty()).text();
  }

  private static double value(String text, String meter) {
    return text.lines()
        .filter(line -> line.startsWith(meter + " "))
        .mapToDouble(line -> Double.parseDouble(line.substring(meter.length() + 1)))
        .findFirst()
        .orElseThrow();
  }
}
