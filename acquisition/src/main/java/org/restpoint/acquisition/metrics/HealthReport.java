package org.restpoint.acquisition.metrics;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.link.LinkHealth.Condition;

/**
 * How the whole service is.
 *
 * @param ready whether the start is done: links started, broker attempted
 * @param probes how each probe's link is, in the station file's order
 * @param broker how the connection to the broker is
 * @param journal how the journal is
 */
public record HealthReport(
    boolean ready, Map<String, LinkHealth> probes, Part broker, Part journal) {

  /** The service as one word. */
  public enum Status {
    /** Everything works. */
    OK,
    /** The start is not done. */
    STARTING,
    /** At least one part does not work; the others go on. */
    FAILING
  }

  /**
   * A part of the service.
   *
   * @param working whether it does its work now
   * @param detail for a person: what is so, and when it does not work what to do
   */
  public record Part(boolean working, String detail) {}

  public HealthReport {
    probes = Collections.unmodifiableMap(new LinkedHashMap<>(probes));
  }

  /** One word for it all: starting until ready, then failing as soon as any part fails. */
  public Status status() {
    if (!ready) {
      return Status.STARTING;
    }
    boolean allWork =
        broker.working()
            && journal.working()
            && probes.values().stream().allMatch(HealthReport::works);
    return allWork ? Status.OK : Status.FAILING;
  }

  /** 200 when everything works, else 503. */
  public int httpStatus() {
    return status() == Status.OK ? 200 : 503;
  }

  /** The report as one JSON object. */
  public String json() {
    ObjectNode report = EventJson.mapper().createObjectNode();
    report.put("status", lowerCase(status()));
    report.put("ready", ready);
    ObjectNode links = report.putObject("probes");
    probes.forEach((probe, health) -> write(links.putObject(probe), health));
    report.set("broker", EventJson.mapper().valueToTree(broker));
    report.set("journal", EventJson.mapper().valueToTree(journal));
    return EventJson.write(report);
  }

  private static void write(ObjectNode link, LinkHealth health) {
    link.put("working", works(health));
    link.put("condition", lowerCase(health.condition()));
    link.put("detail", health.detail());
    health.lastArrival().ifPresent(time -> link.put("lastArrival", time.toString()));
  }

  /** A link that opens has not failed yet, and a recording that has ended never will. */
  private static boolean works(LinkHealth health) {
    Condition condition = health.condition();
    return condition == Condition.READING
        || condition == Condition.OPENING
        || condition == Condition.ENDED;
  }

  private static String lowerCase(Enum<?> word) {
    return word.name().toLowerCase(Locale.ROOT);
  }
}
