package org.restpoint.acquisition.command;

/** An invented bench with a nitrate electrode, no3-a. */
final class WillowBench {

  /** Its station file; the electrode is on a serial line that nobody has to open. */
  static final String FILE =
      with("{ serial: { port: /dev/ttyUSB0, line: '(?<millivolts>[-+.\\d]+) mV' } }");

  private WillowBench() {}

  /**
   * Its station file with another link.
   *
   * @param more further keys of the probe, each with its value
   */
  static String with(String link, String... more) {
    StringBuilder text =
        new StringBuilder(
            """
            station: willow-bench
            broker: { embedded: { port: 0 } }
            standards:
              low: { concentration: 5 mg/L, basis: as-N }
            probes:
              no3-a:
                analyte: nitrate
                basis: as-N
                temperature: { fixed: 22.0 Cel }
                calibrate: { standards: [low] }
            """);
    text.append("    link: ").append(link).append('\n');
    for (String line : more) {
      text.append("    ").append(line).append('\n');
    }
    return text.toString();
  }
}
