package org.restpoint.acquisition.metrics;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.BindException;
import java.net.ConnectException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.SocketException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.metrics.HealthReport.Part;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkTally;
import org.restpoint.config.station.HttpAddress;

class HttpEndpointTest {

  private static final HttpAddress FREE_PORT = new HttpAddress("127.0.0.1", 0);

  private final Metrics metrics = new Metrics();
  private final HttpClient client = HttpClient.newHttpClient();
  private volatile boolean brokerWorks = true;
  private final HttpEndpoint endpoint = new HttpEndpoint(FREE_PORT, metrics, this::health);

  @AfterEach
  void close() {
    endpoint.close();
  }

  @Test
  void prometheusTextShowsTheCountersOfALink() throws Exception {
    countSomething();

    HttpResponse<String> answer = send(get(start(), "/metrics"));

    assertThat(answer.statusCode()).isEqualTo(200);
    assertThat(header(answer, "Content-Type"))
        .isEqualTo("text/plain; version=0.0.4; charset=utf-8");
    assertThat(answer.body())
        .contains("# TYPE restpoint_link_received_total counter")
        .contains("restpoint_link_received_total{probe=\"no3-a\"} 3.0")
        .contains("restpoint_link_accepted_total{probe=\"no3-a\"} 1.0")
        .contains("restpoint_link_rejected_total{probe=\"no3-a\"} 1.0")
        .contains("restpoint_link_dropped_total{probe=\"no3-a\"} 1.0");
  }

  @Test
  void openMetricsShowsTheSameToWhoAsksForIt() throws Exception {
    countSomething();

    HttpResponse<String> answer =
        send(
            get(start(), "/metrics")
                .header("Accept", "text/plain;q=0.2")
                .header("Accept", "application/openmetrics-text;version=1.0.0;q=0.9"));

    assertThat(header(answer, "Content-Type"))
        .isEqualTo("application/openmetrics-text; version=1.0.0; charset=utf-8");
    assertThat(answer.body())
        .contains("# TYPE restpoint_link_received counter")
        .contains("restpoint_link_received_total{probe=\"no3-a\"} 3.0")
        .endsWith("# EOF\n");
  }

  @Test
  void healthIs200WhileEverythingWorksAnd503Afterwards() throws Exception {
    HttpAddress open = start();

    HttpResponse<String> good = send(get(open, "/health"));
    brokerWorks = false;
    HttpResponse<String> bad = send(get(open, "/health"));

    assertThat(good.statusCode()).isEqualTo(200);
    assertThat(header(good, "Content-Type")).isEqualTo("application/json");
    assertThat(json(good).at("/status").asText()).isEqualTo("ok");
    assertThat(json(good).at("/probes/no3-a/condition").asText()).isEqualTo("reading");
    assertThat(bad.statusCode()).isEqualTo(503);
    assertThat(json(bad).at("/status").asText()).isEqualTo("failing");
    assertThat(json(bad).at("/broker/working").asBoolean(true)).isFalse();
    assertThat(json(bad).at("/broker/detail").asText()).isEqualTo("broker refused");
  }

  @Test
  void headAnswersLikeGetWithoutABody() throws Exception {
    HttpAddress open = start();

    HttpResponse<String> health =
        send(get(open, "/health").method("HEAD", BodyPublishers.noBody()));
    HttpResponse<String> full = send(get(open, "/health"));

    assertThat(health.statusCode()).isEqualTo(200);
    assertThat(health.body()).isEmpty();
    assertThat(header(health, "Content-Length")).isEqualTo(header(full, "Content-Length"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"POST", "PUT", "DELETE", "OPTIONS", "PATCH"})
  void nothingButGetAndHeadIsAnswered(String method) throws Exception {
    HttpResponse<String> answer =
        send(get(start(), "/metrics").method(method, BodyPublishers.ofString("x".repeat(10_000))));

    assertThat(answer.statusCode()).isEqualTo(405);
    assertThat(header(answer, "Allow")).isEqualTo("GET, HEAD");
    assertThat(answer.body()).isEqualTo("Only GET and HEAD are answered here.\n");
  }

  @ParameterizedTest
  @ValueSource(strings = {"/", "/metric", "/metrics/", "/metricsx", "/health/x", "/%3Cscript%3E"})
  void everyOtherPathIsUnknownAndNotRepeated(String path) throws Exception {
    HttpResponse<String> answer = send(get(start(), path).header("X-Odd", "said-by-the-caller"));

    assertThat(answer.statusCode()).isEqualTo(404);
    assertThat(answer.body()).isEqualTo("There is /metrics and /health here.\n");
    assertThat(answer.headers().map().toString()).doesNotContain("said-by-the-caller");
  }

  @Test
  void aReportThatCannotBeMadeIsA500WithoutItsReason() throws Exception {
    Supplier<HealthReport> broken =
        () -> {
          throw new IllegalStateException("the password is in /etc/secret");
        };
    try (HttpEndpoint other = new HttpEndpoint(FREE_PORT, metrics, broken)) {
      HttpResponse<String> answer = send(get(other.start(), "/health"));

      assertThat(answer.statusCode()).isEqualTo(500);
      assertThat(answer.body())
          .isEqualTo("This could not be answered; the service's log says why.\n");
    }
  }

  @Test
  void aTakenPortIsToldToThePerson() throws Exception {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      HttpAddress address = new HttpAddress("127.0.0.1", taken.getLocalPort());
      try (HttpEndpoint second = new HttpEndpoint(address, metrics, this::health)) {
        assertThatThrownBy(second::start)
            .isInstanceOf(HttpTroubleException.class)
            .hasMessage(
                "http 127.0.0.1:%d is taken: another program listens there. Set http in the"
                    + " station file to another port, to port 0 for a free one, or leave it out.",
                taken.getLocalPort());
      }
    }
  }

  @Test
  void anAddressOthersCouldReachIsRefused() {
    try (HttpEndpoint open =
        new HttpEndpoint(new HttpAddress("0.0.0.0", 0), metrics, this::health)) {
      assertThatThrownBy(open::start)
          .hasMessage(
              "http 0.0.0.0:0 is not a loopback address. Set http in the station file to 127.0.0.1"
                  + " and a port, and let a proxy on this machine serve others.");
    }
  }

  @Test
  void aPortKeptForTheAdministratorAndAnyOtherTroubleAreToldToo() {
    assertThat(
            HttpTroubleException.notOpened(
                new HttpAddress("127.0.0.1", 80), new SocketException("Permission denied")))
        .hasMessageStartingWith(
            "http 127.0.0.1:80 may not be opened: ports below 1024 are for the administrator. Set");
    assertThat(
            HttpTroubleException.notOpened(
                new HttpAddress("::1", 9464), new BindException("Cannot assign requested address")))
        .hasMessageStartingWith(
            "http [::1]:9464 cannot be opened: Cannot assign requested address. Set http");
  }

  @Test
  void closingTwiceIsLikeClosingOnceAndNobodyAnswersAfterwards() throws Exception {
    HttpAddress open = start();

    endpoint.close();
    endpoint.close();

    assertThatThrownBy(() -> send(get(open, "/health"))).isInstanceOf(ConnectException.class);
    assertThatThrownBy(endpoint::start).isInstanceOf(IllegalStateException.class);
  }

  @Test
  void aCallerInTheMiddleOfARequestDoesNotHoldTheClosing() throws Exception {
    CountDownLatch asked = new CountDownLatch(1);
    CountDownLatch never = new CountDownLatch(1);
    HttpEndpoint stuck =
        new HttpEndpoint(
            FREE_PORT,
            metrics,
            () -> {
              asked.countDown();
              await(never);
              return health();
            });
    HttpAddress open = stuck.start();
    try (Socket caller = new Socket(InetAddress.getLoopbackAddress(), open.port())) {
      caller.getOutputStream().write("GET /health HTTP/1.1\r\nHost: x\r\n\r\n".getBytes(US_ASCII));
      assertThat(asked.await(30, TimeUnit.SECONDS)).isTrue();

      stuck.close();

      caller.setSoTimeout(30_000);
      assertThat(readOrReset(caller)).isEqualTo(-1);
    }
  }

  @Test
  void callersThatSayNothingDoNotKeepOthersOut() throws Exception {
    HttpAddress open = start();
    Socket[] silent = new Socket[8];
    for (int i = 0; i < silent.length; i++) {
      silent[i] = new Socket(InetAddress.getLoopbackAddress(), open.port());
    }

    assertThat(send(get(open, "/health")).statusCode()).isEqualTo(200);

    for (Socket socket : silent) {
      socket.close();
    }
  }

  private HealthReport health() {
    LinkHealth link = new LinkHealth(Condition.READING, "", Optional.empty());
    Part broker = brokerWorks ? new Part(true, "connected") : new Part(false, "broker refused");
    return new HealthReport(true, Map.of("no3-a", link), broker, new Part(true, ""));
  }

  private void countSomething() {
    LinkTally tally = new LinkTally();
    metrics.link(
        "no3-a", tally::counts, () -> new LinkHealth(Condition.READING, "", Optional.empty()));
    tally.offered(true);
    tally.offered(false);
    tally.rejected();
  }

  private HttpAddress start() throws HttpTroubleException {
    HttpAddress open = endpoint.start();
    assertThat(open.port()).isPositive();
    return open;
  }

  private static HttpRequest.Builder get(HttpAddress open, String path) {
    return HttpRequest.newBuilder(URI.create("http://" + open.host() + ":" + open.port() + path))
        .timeout(Duration.ofSeconds(30));
  }

  private HttpResponse<String> send(HttpRequest.Builder request)
      throws IOException, InterruptedException {
    return client.send(request.build(), BodyHandlers.ofString());
  }

  private static String header(HttpResponse<String> answer, String name) {
    return answer.headers().firstValue(name).orElseThrow();
  }

  private static JsonNode json(HttpResponse<String> answer) throws IOException {
    return EventJson.mapper().readTree(answer.body());
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static int readOrReset(Socket caller) throws IOException {
    try {
      return caller.getInputStream().read();
    } catch (SocketException e) {
      return -1; // hung up with a reset, which is hanging up all the same
    }
  }
}
