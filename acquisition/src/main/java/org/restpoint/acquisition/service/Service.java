package org.restpoint.acquisition.service;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import org.restpoint.acquisition.metrics.HttpEndpoint;
import org.restpoint.acquisition.metrics.HttpTroubleException;
import org.restpoint.acquisition.metrics.Metrics;
import org.restpoint.adapters.broker.EmbeddedBroker;
import org.restpoint.adapters.broker.EmbeddedBrokerException;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.JournalException;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.mqtt.BrokerAddress;
import org.restpoint.adapters.mqtt.ConnectionTimes;
import org.restpoint.adapters.mqtt.InstructionInbox;
import org.restpoint.adapters.mqtt.MqttReadings;
import org.restpoint.adapters.mqtt.OutboxPublisher;
import org.restpoint.adapters.mqtt.Presence;
import org.restpoint.adapters.mqtt.PublisherSettings;
import org.restpoint.config.station.Broker;
import org.restpoint.config.station.HttpAddress;
import org.restpoint.config.station.Probe;
import org.restpoint.config.station.Station;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A running station: the wiring, in the order things start; they end in the opposite order. An
 * absent port or a dead broker does not keep it from starting; a journal that cannot be written
 * does.
 */
public final class Service implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(Service.class);

  /** Under this key the journal tells other commands where the broker is. */
  public static final String BROKER_FACT = "broker-url";

  private final Station station;
  private final Deque<AutoCloseable> open = new ArrayDeque<>();
  private final BlockingQueue<Throwable> defects = new LinkedBlockingQueue<>();
  private final Map<String, Link> links = new LinkedHashMap<>();

  private volatile boolean ready;

  private Service(Station station) {
    this.station = station;
  }

  /**
   * Starts a station.
   *
   * @throws ServiceException when it cannot start, in words for the person
   */
  public static Service start(Station station, Surroundings surroundings) {
    Service service = new Service(station);
    try {
      service.wire(surroundings);
      return service;
    } catch (JournalException | EmbeddedBrokerException | HttpTroubleException e) {
      service.close();
      throw new ServiceException(String.valueOf(e.getMessage()));
    } catch (ServiceException e) {
      service.close();
      throw e;
    }
  }

  private void wire(Surroundings around) throws EmbeddedBrokerException, HttpTroubleException {
    Journal journal =
        opened(new Journal(new JournalSettings(station.journal(), around.privateFolder())));
    journal.start();
    BrokerAddress address = broker();
    journal.setFact(BROKER_FACT, address.url().toString());

    Topics topics = new Topics(station.name());
    String client = "restpoint-" + station.name();
    BrokerLog brokerLog = new BrokerLog();
    OutboxPublisher publisher =
        opened(
            new OutboxPublisher(
                address,
                PublisherSettings.usual(client, Presence.of(topics.online())),
                journal,
                brokerLog,
                around.clock(),
                around.nanos()));
    Metrics metrics = new Metrics();
    Engine engine =
        opened(
            new Engine(
                station,
                journal,
                around.clock(),
                new Counted(publisher, metrics, around.witness())));
    InstructionInbox inbox =
        opened(
            new InstructionInbox(
                address,
                client + "-instructions",
                List.of(topics.instruction("+")),
                ConnectionTimes.usual(),
                message ->
                    engine.instruct(
                        new Input.Message(
                            topics.probeOf(message.topic()),
                            message.text(),
                            message.retained(),
                            message.duplicate(),
                            message.acknowledge())),
                new Doorkeeper(brokerLog, publisher::start),
                around.clock(),
                around.nanos()));
    MqttReadings readings =
        opened(
            new MqttReadings(
                address,
                client + "-readings",
                ConnectionTimes.usual(),
                around.clock(),
                around.nanos()));
    LinkWiring wiring = new LinkWiring(around, readings);
    for (Probe probe : station.probes().values()) {
      Link link = wiring.link(probe, engine.handOver(probe.name()));
      links.put(probe.name(), link);
    }
    opened(new AllLinks(List.copyOf(links.values())));
    Vitals vitals = new Vitals(engine, publisher, journal, links);
    vitals.measure(metrics);
    if (station.http().isPresent()) {
      HttpEndpoint http =
          opened(new HttpEndpoint(station.http().get(), metrics, () -> vitals.report(ready)));
      HttpAddress at = http.start();
      LOG.info("metrics and health at http://{}:{}", at.host(), at.port());
    }

    engine.defect().thenAccept(defects::add);
    engine.start();
    inbox.start();
    links.values().forEach(Link::start);
    ready = true;
    LOG.info(
        "ready: station {}, {}, broker {}",
        station.name(),
        links.size() == 1 ? "1 probe" : links.size() + " probes",
        address.url());
  }

  private BrokerAddress broker() throws EmbeddedBrokerException {
    if (station.broker() instanceof Broker.Remote remote) {
      return BrokerAddresses.remote(remote);
    }
    EmbeddedBroker embedded =
        opened(new EmbeddedBroker(((Broker.Embedded) station.broker()).port()));
    int port = embedded.start();
    return BrokerAddresses.embedded(port);
  }

  private <T extends AutoCloseable> T opened(T part) {
    open.push(part);
    return part;
  }

  /**
   * Waits until a defect of its own has ended what decides. It reads and answers nothing any more
   * then, and is to be closed; what was committed is in the journal.
   */
  public Throwable awaitDefect() throws InterruptedException {
    return defects.take();
  }

  /** The link of a probe, if the station has it. */
  public Optional<Link> link(String probe) {
    return Optional.ofNullable(links.get(probe));
  }

  /** Ends everything in the opposite order; within 5 s, nothing committed is lost. Idempotent. */
  @Override
  public void close() {
    while (!open.isEmpty()) {
      AutoCloseable part = open.pop();
      try {
        part.close();
      } catch (Exception e) {
        LOG.warn("{} did not end well: {}", part.getClass().getSimpleName(), e.getMessage());
      }
    }
  }
}
