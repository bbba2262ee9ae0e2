package org.restpoint.acquisition.endtoend;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;

/** Station files of an invented bench with one nitrate electrode on a serial line. */
final class BenchStation {

  static final String NAME = "willow-bench";
  static final String PROBE = "no3-a";

  /** Invented lots. */
  static final double LOW = 5;

  static final double HIGH = 100;

  private BenchStation() {}

  /**
   * Writes the station file.
   *
   * @param link what stands under {@code link}, on one line
   */
  static Path write(Path folder, URI broker, String link) {
    return write(
        folder,
        """
        station: willow-bench
        broker: { url: "%s" }
        http: 127.0.0.1:0
        standards:
          low:  { concentration: 5 mg/L,   basis: as-N, lot: A17 }
          high: { concentration: 100 mg/L, basis: as-N, lot: A19 }
        probes:
          no3-a:
            analyte: nitrate
            basis: as-N
            link: %s
            temperature: { from: reading }
            settle: { rule: consecutive, readings: 10, within: 0.1 mV, not-before: 2 s, give-up-after: 1 min }
            calibrate: { standards: [low, high], slope: 90..103 %% }
        """
            .formatted(broker, link));
  }

  /** Writes any station file. */
  static Path write(Path folder, String text) {
    try {
      return Files.writeString(folder.resolve("station.yaml"), text);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * Writes a station file with as many probes as there are links, named no3-a, no3-b and so on.
   *
   * @param broker what stands under {@code broker}, on one line
   * @param more more lines at the top, or nothing
   */
  static Path plain(Path folder, String broker, String more, String... links) {
    StringBuilder text = new StringBuilder();
    text.append("station: bench\nbroker: %s\n%s".formatted(broker, more))
        .append("standards: { low: { concentration: 5 mg/L, basis: as-N } }\nprobes:\n");
    char name = 'a';
    for (String link : links) {
      text.append(
          """
            no3-%s:
              analyte: nitrate
              basis: as-N
              link: %s
              temperature: { fixed: 22 Cel }
              calibrate: { standards: [low] }
          """
              .formatted(name++, link));
    }
    return write(folder, text.toString());
  }

  /** A broker elsewhere. */
  static String remote(URI broker) {
    return "{ url: \"%s\" }".formatted(broker);
  }

  /** A serial link to a meter that sends by itself. */
  static String serial(Path port) {
    return "{ serial: { port: %s, line: '%s' } }".formatted(port, line());
  }

  /** The lines of {@link ScriptedElectrode}. */
  static String line() {
    return "E=(?<millivolts>[-+.\\d]+) mV T=(?<celsius>[-+.\\d]+) C";
  }

  /** A topic of this station's probe. */
  static String topic(String what) {
    return "restpoint/willow-bench/no3-a/" + what;
  }
}
