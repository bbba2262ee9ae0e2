package org.restpoint.acquisition.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntFunction;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.command.Commands;
import org.restpoint.adapters.checksum.Crc16;
import org.restpoint.adapters.checksum.Xor;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.journal.SpanQuery;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.serial.PseudoTerminal;
import org.restpoint.config.station.Station;

/**
 * The way of an integrator with an unknown meter, on five invented meters: listen, paste what is
 * printed under a station, fill in what stands in comments, run.
 */
@EnabledOnOs(OS.LINUX)
@Timeout(120)
class ListenTest {

  private static final String STATION =
      """
      station: first-day
      broker: { embedded: { port: 0 } }
      standards:
        low: { concentration: 5 mg/L, basis: as-N }
        high: { concentration: 100 mg/L, basis: as-N }
      """;

  /** Longer than the tenth of a second that stands between two records. */
  private static final int PAUSE_MILLIS = 130;

  @TempDir Path folder;
  private final PseudoTerminal meter = new PseudoTerminal();
  private final ScheduledExecutorService speaking = Executors.newSingleThreadScheduledExecutor();
  private final StringWriter err = new StringWriter();

  @AfterEach
  void unplug() {
    speaking.shutdownNow();
    meter.close();
  }

  private Future<?> speak(IntFunction<String> line) {
    AtomicInteger spoken = new AtomicInteger();
    return speaking.scheduleWithFixedDelay(
        () -> meter.send(line.apply(spoken.getAndIncrement())),
        0,
        PAUSE_MILLIS,
        TimeUnit.MILLISECONDS);
  }

  private String listened(IntFunction<String> line) {
    Future<?> speech = speak(line);
    StringWriter out = new StringWriter();
    int status =
        Commands.line()
            .setOut(new PrintWriter(out, true))
            .setErr(new PrintWriter(err, true))
            .execute("listen", meter.path().toString(), "--for", "60s");
    assertThat(status).as(err.toString()).isZero();
    assertThat(speech.isDone()).as("the meter goes on").isFalse();
    return out.toString();
  }

  /** What a person does with it: takes away the comment signs of what is to be filled in. */
  private static String filledIn(String section) {
    return section.replaceAll("(?m)^    # (?=analyte:|basis:|temperature:|calibrate:)", "    ");
  }

  /** The latest readings of a service that runs the section. */
  private Map<String, String> read(String section) throws InterruptedException {
    Station station = Stations.read(folder, STATION + filledIn(section));
    Surroundings surroundings =
        new Surroundings(
            folder.resolve("native"), InstantSource.system(), System::nanoTime, 1, event -> {});
    try (Service service = Service.start(station, surroundings)) {
      Eventually.become(
          "all are read",
          () ->
              station.probes().keySet().stream()
                  .allMatch(probe -> service.link(probe).orElseThrow().counts().accepted() > 0));
      assertThat(station.probes().keySet())
          .allSatisfy(
              probe -> assertThat(service.link(probe).orElseThrow().counts().rejected()).isZero());
    }
    Map<String, String> latest = new TreeMap<>();
    try (JournalReader reader =
        new JournalReader(new JournalSettings(station.journal(), folder.resolve("native")))) {
      reader.start();
      reader.readings(
          SpanQuery.all(),
          stored ->
              latest.put(
                  stored.probe(),
                  String.format(
                      Locale.ROOT,
                      "%.2f mV %.2f Cel",
                      stored.reading().millivolts().orElse(Double.NaN),
                      stored.reading().celsius().orElse(Double.NaN))));
    }
    return latest;
  }

  /** A last digit that flickers, so that no number stands still: 0, 1, 2, 1, 0 ... */
  private static int flicker(int n) {
    return n % 4 == 3 ? 1 : n % 4;
  }

  @Test
  void linesWithNamesAndUnits() throws InterruptedException {
    String section = listened(n -> "E=-12.3%d mV T=25.1 C\r\n".formatted(4 + flicker(n)));

    assertThat(section)
        .contains("line: 'E=(?<millivolts>[-+.\\d]+) mV T=(?<celsius>[-+.\\d]+) C'")
        .doesNotContain("Look at this");
    assertThat(err.toString()).contains("mV T=25.1 C").contains("| -12.3").contains("25.10 Cel");
    assertThat(read(section).get("probe-1")).matches("-12\\.3[456] mV 25\\.10 Cel");
  }

  @Test
  void channelsWithADecimalComma() throws InterruptedException {
    String section =
        listened(
            n ->
                n % 2 == 0
                    ? "01;+0187,4%d;21,9\r\n".formatted(flicker(n / 2))
                    : "02;-0092,1%d;21,9\r\n".formatted(flicker(n / 2)));

    assertThat(section).contains("decimal: comma").contains("channel: \"01\"");
    Map<String, String> read = read(section);
    assertThat(read.get("channel-01")).matches("187\\.4[012] mV 21\\.90 Cel");
    assertThat(read.get("channel-02")).matches("-92\\.1[012] mV 21\\.90 Cel");
  }

  @Test
  void recordsOfAFixedWidthInVoltsAndKelvin() throws InterruptedException {
    String section = listened(n -> "  -0.0591%d V  298.25K".formatted(5 + flicker(n)));

    assertThat(section).contains("width: 21");
    assertThat(read(section).get("probe-1")).matches("-59\\.1[567] mV 25\\.10 Cel");
  }

  @Test
  void sentencesWithAnExclusiveOr() throws InterruptedException {
    String section =
        listened(
            n -> {
              String said = "M1,123.%d,mV,25.0,C".formatted(4 + flicker(n));
              return "$%s*%02X\r\n"
                  .formatted(said, Xor.of(said.getBytes(StandardCharsets.US_ASCII)));
            });

    assertThat(section)
        .contains("checksum: xor")
        .contains("line: '\\$M1,(?<millivolts>[-+.\\d]+),mV,(?<celsius>[-+.\\d]+),C'");
    assertThat(read(section).get("probe-1")).matches("123\\.[456]0 mV 25\\.00 Cel");
  }

  @Test
  void countsAndOhmsWithARemainder() throws InterruptedException {
    String section =
        listened(
            n -> {
              String said = "c %d r 10234".formatted(33012 + flicker(n));
              int crc = Crc16.MODBUS.of(said.getBytes(StandardCharsets.US_ASCII));
              return "%s %04X\r".formatted(said, crc);
            });

    assertThat(section)
        .contains("checksum: crc-16-modbus")
        .contains("scale: 0.0625 mV    # SUPPOSED")
        .contains("thermometer: { beta: 3435 K, resistance: 10000 Ohm, at: 25 Cel }    # SUPPOSED");
    // 33012 counts of 0.0625 mV less 2048 mV; 1/T = 1/298.15 K + ln(1.0234)/3435 K.
    assertThat(read(section).get("probe-1")).matches("15\\.(25|31|38) mV 24\\.40 Cel");
  }
}
