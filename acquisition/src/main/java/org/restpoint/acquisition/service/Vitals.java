package org.restpoint.acquisition.service;

import java.util.LinkedHashMap;
import java.util.Map;
import org.restpoint.acquisition.metrics.HealthReport;
import org.restpoint.acquisition.metrics.Metrics;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.mqtt.BrokerHealth;
import org.restpoint.adapters.mqtt.OutboxPublisher;

/**
 * How the parts of a running service are: for its health report and its gauges.
 *
 * @param engine the engine
 * @param publisher the publisher
 * @param journal the journal
 * @param links the links by probe
 */
record Vitals(Engine engine, OutboxPublisher publisher, Journal journal, Map<String, Link> links) {

  HealthReport report(boolean ready) {
    Map<String, LinkHealth> probes = new LinkedHashMap<>();
    links.forEach((probe, link) -> probes.put(probe, link.check()));
    String trouble = engine.journalTrouble();
    return new HealthReport(
        ready,
        probes,
        broker(publisher.check()),
        new HealthReport.Part(trouble == null, trouble == null ? "written" : trouble));
  }

  private static HealthReport.Part broker(BrokerHealth health) {
    if (health instanceof BrokerHealth.Connected connected) {
      return new HealthReport.Part(true, "connected since " + connected.since());
    }
    if (health instanceof BrokerHealth.Refused refused) {
      return new HealthReport.Part(false, refused.trouble().text());
    }
    return new HealthReport.Part(false, "not connected yet");
  }

  void measure(Metrics metrics) {
    links.forEach((probe, link) -> metrics.link(probe, link::counts, link::check));
    metrics.gauge("restpoint.outbox.waiting", "Messages not yet acknowledged", journal::waiting);
    metrics.gauge("restpoint.engine.waiting", "Inputs not yet taken", engine::waiting);
    metrics.gauge(
        "restpoint.broker.in.flight",
        "Messages sent and not yet acknowledged",
        () -> publisher.counts().inFlight());
    metrics.counter(
        "restpoint.broker.published",
        "Messages of QoS 1 sent, each sending counted",
        () -> publisher.counts().published());
    metrics.counter(
        "restpoint.broker.transient.dropped",
        "Messages of QoS 0 given up",
        () -> publisher.counts().transientDropped());
  }
}
