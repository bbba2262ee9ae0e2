package org.restpoint.adapters.sdi12;

import java.nio.charset.StandardCharsets;

/**
 * What is sent to a sensor (Table 5): its address, what it is to do, an exclamation mark.
 *
 * @param text the whole of it
 */
record Command(String text) {

  /**
   * How many commands there are for the values of one measurement: {@code aD0!} to {@code aD9!}.
   */
  static final int DATA_COMMANDS = 10;

  /** {@code a!}: is it there (section 4.4.1). */
  static Command acknowledge(SensorAddress address) {
    return to(address, "");
  }

  /** {@code aI!}: what is it (section 4.4.2). */
  static Command identify(SensorAddress address) {
    return to(address, "I");
  }

  /** {@code ?!}: which address has the only sensor of this bus (section 4.4.3). */
  static Command whichAddress() {
    return new Command("?!");
  }

  /** {@code aAb!}: have another address from now on (section 4.4.4). */
  static Command changeAddress(SensorAddress from, SensorAddress to) {
    return to(from, "A" + to);
  }

  /** {@code aM!}, {@code aCC1!}, {@code aR0!}: measure (sections 4.4.5 and 4.4.7). */
  static Command measure(SensorAddress address, Measurement measurement) {
    return to(address, measurement.body());
  }

  /**
   * {@code aD0!} to {@code aD9!}: send the values (section 4.4.8).
   *
   * @param part which part of them, below {@link #DATA_COMMANDS}
   */
  static Command sendData(SensorAddress address, int part) {
    return to(address, "D" + part);
  }

  private static Command to(SensorAddress address, String body) {
    return new Command(address + body + "!");
  }

  byte[] bytes() {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
