package org.restpoint.acquisition.metrics;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.restpoint.acquisition.metrics.HealthReport.Part;
import org.restpoint.acquisition.metrics.HealthReport.Status;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.link.LinkHealth.Condition;

class HealthReportTest {

  private static final Part FINE = new Part(true, "");
  private static final Part BAD = new Part(false, "not reached; it is tried again");

  @Test
  void aServiceInWhichEverythingWorksIsOk() {
    Map<String, LinkHealth> probes = new LinkedHashMap<>();
    probes.put(
        "no3-b",
        new LinkHealth(
            Condition.READING, "", Optional.of(Instant.parse("2026-04-02T14:03:00.5Z"))));
    probes.put("no3-a", new LinkHealth(Condition.OPENING, "", Optional.empty()));
    HealthReport report =
        new HealthReport(true, probes, new Part(true, "connected to tcp://127.0.0.1:1883"), FINE);

    assertThat(report.httpStatus()).isEqualTo(200);
    assertThat(report.json())
        .isEqualTo(
            "{\"status\":\"ok\",\"ready\":true,\"probes\":{"
                + "\"no3-b\":{\"working\":true,\"condition\":\"reading\",\"detail\":\"\","
                + "\"lastArrival\":\"2026-04-02T14:03:00.500Z\"},"
                + "\"no3-a\":{\"working\":true,\"condition\":\"opening\",\"detail\":\"\"}},"
                + "\"broker\":{\"working\":true,\"detail\":\"connected to tcp://127.0.0.1:1883\"},"
                + "\"journal\":{\"working\":true,\"detail\":\"\"}}");
  }

  @Test
  void aServiceThatIsNotReadyIsStartingWhateverElseIsSo() {
    HealthReport report = new HealthReport(false, Map.of(), BAD, FINE);

    assertThat(report.status()).isEqualTo(Status.STARTING);
    assertThat(report.httpStatus()).isEqualTo(503);
    assertThat(report.json()).contains("\"status\":\"starting\"", "\"ready\":false");
  }

  @Test
  void aBrokerOrAJournalThatDoesNotWorkIsAFailure() {
    assertThat(new HealthReport(true, Map.of(), BAD, FINE).status()).isEqualTo(Status.FAILING);
    assertThat(new HealthReport(true, Map.of(), FINE, BAD).status()).isEqualTo(Status.FAILING);
    assertThat(new HealthReport(true, Map.of(), FINE, BAD).httpStatus()).isEqualTo(503);
  }

  @ParameterizedTest
  @EnumSource(names = {"NEW", "SILENT", "LOST", "CLOSED"})
  void aLinkThatGivesNothingIsAFailure(Condition condition) {
    HealthReport report = with(condition);

    assertThat(report.status()).isEqualTo(Status.FAILING);
    assertThat(report.json()).contains("\"working\":false");
  }

  @ParameterizedTest
  @EnumSource(names = {"OPENING", "READING", "ENDED"})
  void aLinkThatOpensReadsOrHasComeToItsEndIsNoFailure(Condition condition) {
    assertThat(with(condition).status()).isEqualTo(Status.OK);
  }

  private static HealthReport with(Condition condition) {
    LinkHealth good = new LinkHealth(Condition.READING, "", Optional.empty());
    LinkHealth other = new LinkHealth(condition, "port /dev/ttyUSB0 is absent", Optional.empty());
    return new HealthReport(true, Map.of("a", good, "b", other), FINE, FINE);
  }
}
