package org.restpoint.acquisition.log;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.logging.LogRecord;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.config.station.LogStyle;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.slf4j.event.Level;

class LogsTest {

  private static final String TIME = "\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d\\.\\d{3}Z";

  private final Logger log = LoggerFactory.getLogger(LogsTest.class);
  private final ByteArrayOutputStream written = new ByteArrayOutputStream();

  @AfterEach
  void quiet() {
    Logs.configure(LogStyle.PLAIN, Level.WARN, System.err);
  }

  @Test
  void aPlainLineHasTimeLevelMessageAndShortName() {
    plain(Level.INFO);

    log.info("probe {} is at rest after {} s", "no3-a", 41);
    log.error("the journal's disk is full");

    assertThat(lines().get(0))
        .matches(TIME + " INFO  probe no3-a is at rest after 41 s \\[LogsTest\\]");
    assertThat(lines().get(1)).matches(TIME + " ERROR the journal's disk is full \\[LogsTest\\]");
  }

  @Test
  void debugIsShownOnlyWhenAskedFor() {
    plain(Level.INFO);
    log.debug("first");
    plain(Level.DEBUG);
    log.debug("second");

    assertThat(lines()).singleElement().asString().contains("DEBUG second");
  }

  @Test
  void aPlainLineGivesTheMessageOfAnExceptionAndNoTrace() {
    plain(Level.INFO);

    log.warn("broker not reached", new IOException("connection refused"));
    log.error("no words", new IllegalStateException());

    assertThat(lines()).hasSize(2);
    assertThat(lines().get(0)).endsWith("broker not reached: connection refused [LogsTest]");
    assertThat(lines().get(1)).endsWith("no words: IllegalStateException [LogsTest]");
  }

  @Test
  void atDebugTheTraceFollowsThePlainLine() {
    plain(Level.DEBUG);

    log.error("stopped", new IOException("disk\nfull"));

    assertThat(lines().get(0)).endsWith("stopped: disk\\nfull [LogsTest]");
    assertThat(lines().get(1)).isEqualTo("    java.io.IOException: disk");
    assertThat(lines().subList(3, lines().size()))
        .allMatch(line -> line.startsWith("      at ") || line.startsWith("      ..."));
  }

  @Test
  void textFromOutsideCanNeitherBeginAPlainLineNorCommandTheTerminal() {
    plain(Level.INFO);

    log.info("read {}", "a\r\n2026 ERROR b\t\u001b[2J\u2028c µ");

    assertThat(lines())
        .singleElement()
        .asString()
        .endsWith("read a\\r\\n2026 ERROR b\\t\\x1b[2J\\x2028c µ [LogsTest]");
  }

  @Test
  void aJsonLineIsOneObjectWhateverTheMessageSays() throws IOException {
    Logs.configure(LogStyle.JSON, Level.INFO, written);

    log.info("two\nlines \"quoted\" µ \u2028");

    assertThat(lines()).hasSize(1);
    JsonNode line = json(0);
    assertThat(line.get("time").asText()).matches(TIME);
    assertThat(line.get("level").asText()).isEqualTo("INFO");
    assertThat(line.get("logger").asText()).isEqualTo(LogsTest.class.getName());
    assertThat(line.get("message").asText()).isEqualTo("two\nlines \"quoted\" µ \u2028");
    assertThat(line.has("exception")).isFalse();
  }

  @Test
  void aJsonLineCarriesTheWholeException() throws IOException {
    Logs.configure(LogStyle.JSON, Level.INFO, written);

    log.warn("failed", new IOException("outer", new IOException("inner")));

    assertThat(lines()).hasSize(1);
    assertThat(json(0).get("exception").asText())
        .startsWith("java.io.IOException: outer")
        .contains("at " + LogsTest.class.getName())
        .contains("Caused by: java.io.IOException: inner");
  }

  @Test
  void librariesAreHeardFromWarningsOnEvenAtDebug() {
    plain(Level.DEBUG);

    for (String library : List.of("io.moquette.broker.Server", "io.netty.util.Pool", "other")) {
      LoggerFactory.getLogger(library).info("chatter");
      LoggerFactory.getLogger(library).warn("trouble");
    }

    assertThat(lines()).hasSize(3).allMatch(line -> line.contains("WARN  trouble"));
  }

  @Test
  void theBrokersThreadsThatEndByThemselvesAreNoWarning() {
    plain(Level.INFO);

    Logger broker = LoggerFactory.getLogger("io.moquette.broker.NewNettyAcceptor");
    broker.warn("Forcing shutdown of worker event loop...");
    broker.error("trouble");

    assertThat(lines()).singleElement().asString().contains("ERROR trouble");
  }

  @Test
  void librariesThatUseTheJdksLoggingAreHeardToo() {
    plain(Level.INFO);
    java.util.logging.Logger paho =
        java.util.logging.Logger.getLogger("org.eclipse.paho.client.mqttv3.internal.ClientComms");

    paho.info("chatter");
    paho.log(new LogRecord(java.util.logging.Level.FINE, "more chatter"));
    paho.warning("connection lost");

    assertThat(lines())
        .singleElement()
        .asString()
        .matches(TIME + " WARN  connection lost \\[ClientComms\\]");
  }

  @Test
  void settingUpAgainReplacesWhatWasThereAndClosesNothing() {
    boolean[] closed = {false};
    OutputStream first =
        new ByteArrayOutputStream() {
          @Override
          public void close() {
            closed[0] = true;
          }
        };
    Logs.configure(LogStyle.PLAIN, Level.INFO, first);

    plain(Level.INFO);
    java.util.logging.Logger.getLogger("once").warning("once");
    log.info("also once");

    assertThat(first).hasToString("");
    assertThat(closed[0]).isFalse();
    assertThat(lines()).hasSize(2);
  }

  @Test
  void aStreamThatCannotBeWrittenDoesNotStopTheService() {
    Logs.configure(
        LogStyle.PLAIN,
        Level.INFO,
        new OutputStream() {
          @Override
          public void write(int letter) throws IOException {
            throw new IOException("broken pipe");
          }
        });
    log.info("nobody hears this");

    plain(Level.INFO);
    log.info("somebody hears this");

    assertThat(lines()).singleElement().asString().contains("somebody hears this");
  }

  private void plain(Level level) {
    Logs.configure(LogStyle.PLAIN, level, written);
  }

  private List<String> lines() {
    return written.toString(UTF_8).lines().toList();
  }

  private JsonNode json(int line) throws IOException {
    return EventJson.mapper().readTree(lines().get(line));
  }
}
