package org.restpoint.acquisition.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
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
import org.restpoint.adapters.sdi12.SimulatedConverter;
import org.restpoint.config.station.Station;
import org.restpoint.stability.reading.Reading;

/**
 * The example of SDI-12 runs as it stands, and its sensors send what its comments say. Only the
 * ports and the time between two asks are others.
 */
@EnabledOnOs(OS.LINUX)
@Timeout(120)
class Sdi12ExampleTest {

  private static final Path EXAMPLE = Path.of("../adapters/examples/sdi12.yaml");

  @TempDir Path folder;

  @Test
  void readingsOfAllProbesComeAsItsCommentsSay() throws Exception {
    Path port = folder.resolve("converter");
    String text = Files.readString(EXAMPLE);
    Station station =
        Stations.read(
            folder,
            text.replace("/dev/serial/by-id/usb-converter-if00-port0", port.toString())
                .replace("broker: embedded", "broker: { embedded: { port: 0 } }")
                .replaceAll("every: \\d+ s", "every: 200 ms"));
    try (SimulatedConverter converter = new SimulatedConverter(port)) {
      converter.sensor('0', 187.4, 11.5, -12.3).takesSeconds(2);
      converter.sensor('b', -0.0921, 284.7);
      converter.echoes();
      converter.plug();
      Surroundings surroundings =
          new Surroundings(
              folder.resolve("native"), InstantSource.system(), System::nanoTime, 1, event -> {});
      try (Service service = Service.start(station, surroundings)) {
        Eventually.become(
            "all are read",
            () ->
                station.probes().keySet().stream()
                    .allMatch(probe -> counts(service, probe).accepted() > 0));
        assertThat(station.probes().keySet())
            .allSatisfy(probe -> assertThat(counts(service, probe).rejected()).isZero());
      }
      assertThat(converter.commands()).contains("0CC!", "0D0!", "bR0!").doesNotContain("0!", "?!");
      for (String shown : new String[] {"000203", "0+187.40+11.50-12.30MG@", "b-0.0921+284.70"}) {
        assertThat(text).contains(shown);
      }
    }

    assertThat(kept(station))
        .containsOnly(
            entry("nitrate-well", "187.400 mV 11.500 Cel"),
            entry("chloride-well", "-12.300 mV 11.500 Cel"),
            entry("ammonium-well", "-92.100 mV 11.550 Cel"));
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
    return String.format(
        Locale.ROOT,
        "%.3f mV %.3f Cel",
        reading.millivolts().orElseThrow(),
        reading.celsius().orElseThrow());
  }
}
