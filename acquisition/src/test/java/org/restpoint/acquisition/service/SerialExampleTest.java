package org.restpoint.acquisition.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.journal.SpanQuery;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.serial.PseudoTerminal;
import org.restpoint.config.station.Station;
import org.restpoint.stability.reading.Reading;

/**
 * The example of serial lines runs as it stands, and its meters send what its comments say. Only
 * the ports, the broker's port and the time between two asks are others.
 */
@EnabledOnOs(OS.LINUX)
@Timeout(120)
class SerialExampleTest {

  private static final Path EXAMPLE = Path.of("../adapters/examples/serial.yaml");
  private static final String BY_ID = "/dev/serial/by-id/usb-";
  private static final Pattern ANSWER =
      Pattern.compile("(?m)^ +#   asked (\\S+)<CR> +answers +(\\S+)<ETX>");
  private static final int A_WHILE_MILLIS = 50;

  @TempDir Path folder;
  private final PseudoTerminal bench = new PseudoTerminal();
  private final PseudoTerminal box = new PseudoTerminal();
  private final PseudoTerminal converter = new PseudoTerminal();
  private final AtomicBoolean over = new AtomicBoolean();
  private final Map<String, String> answers = new HashMap<>();

  @AfterEach
  void unplug() {
    over.set(true);
    List.of(bench, box, converter).forEach(PseudoTerminal::close);
  }

  private Station station(String text) {
    return Stations.read(
        folder,
        text.replace(BY_ID + "bench-meter-if00-port0", bench.path().toString())
            .replace(BY_ID + "two-channel-box-if00-port0", box.path().toString())
            .replace(BY_ID + "converter-if00-port0", converter.path().toString())
            .replace("broker: embedded", "broker: { embedded: { port: 0 } }")
            .replace("every: 3 s", "every: 60 ms"));
  }

  /** The line that a comment shows. */
  private static String shown(String text, String beginning) {
    return text.lines()
        .map(line -> line.replaceFirst("^ *#   ", ""))
        .filter(line -> line.startsWith(beginning))
        .findFirst()
        .orElseThrow();
  }

  private void answerAsks() {
    StringBuilder asked = new StringBuilder();
    while (!over.get()) {
      asked.append(box.receive(A_WHILE_MILLIS));
      for (int end = asked.indexOf("\r"); end >= 0; end = asked.indexOf("\r")) {
        box.send(Objects.requireNonNull(answers.get(asked.substring(0, end))) + "\u0003");
        asked.delete(0, end + 1);
      }
    }
  }

  @Test
  void readingsOfAllProbesComeAsItsCommentsSay() throws Exception {
    String text = Files.readString(EXAMPLE);
    Matcher answer = ANSWER.matcher(text);
    while (answer.find()) {
      answers.put(answer.group(1), answer.group(2));
    }
    assertThat(answers).hasSize(3);
    Station station = station(text);
    Thread answering = new Thread(this::answerAsks, "two-channel-box");
    answering.start();
    Surroundings surroundings =
        new Surroundings(
            folder.resolve("native"), InstantSource.system(), System::nanoTime, 1, event -> {});
    try (Service service = Service.start(station, surroundings)) {
      Eventually.become(
          "all are read",
          () -> {
            bench.send(shown(text, "mV:") + "\r\n");
            converter.send(shown(text, "+02998") + "\r\n");
            return station.probes().keySet().stream()
                .allMatch(probe -> counts(service, probe).accepted() > 0);
          });
      over.set(true);
      answering.join();
      assertThat(station.probes().keySet())
          .allSatisfy(probe -> assertThat(counts(service, probe).rejected()).isZero());
    }

    // 2998 counts of 0.0625 mV less 12.5 mV; 1/T = 1/298.15 K + ln(1.04673)/3435 K.
    assertThat(kept(station))
        .containsOnly(
            entry("nitrate-bench", "-12.340 mV 21.500 Cel"),
            entry("nitrate-box", "187.400 mV"),
            entry("ammonium-box", "92.100 mV"),
            entry("box-water", "21.500 Cel"),
            entry("chloride-converter", "174.875 mV 23.823 Cel"));
  }

  private static LinkCounts counts(Service service, String probe) {
    return service.link(probe).orElseThrow().counts();
  }

  /** The latest reading of each probe. */
  private Map<String, String> kept(Station station) {
    Map<String, String> latest = new HashMap<>();
    try (JournalReader reader =
        new JournalReader(new JournalSettings(station.journal(), folder.resolve("native")))) {
      reader.start();
      reader.readings(
          SpanQuery.all(), stored -> latest.put(stored.probe(), shown(stored.reading())));
    }
    return latest;
  }

  private static String shown(Reading reading) {
    List<String> parts = new ArrayList<>();
    reading.millivolts().ifPresent(mv -> parts.add(String.format(Locale.ROOT, "%.3f mV", mv)));
    reading.celsius().ifPresent(t -> parts.add(String.format(Locale.ROOT, "%.3f Cel", t)));
    return String.join(" ", parts);
  }
}
