package org.restpoint.acquisition.command;

/** An invented bench with a nitrate electrode on a serial line that nobody has to open. */
final class WillowBench {

  /** Its station file. */
  static final String FILE =
      """
      station: willow-bench
      broker: embedded
      standards:
        low: { concentration: 5 mg/L, basis: as-N }
      probes:
        no3-a:
          analyte: nitrate
          basis: as-N
          link: { serial: { port: /dev/ttyUSB0, line: '(?<millivolts>[-+.\\d]+) mV' } }
          temperature: { fixed: 22.0 Cel }
          calibrate: { standards: [low] }
      """;

  private WillowBench() {}
}
