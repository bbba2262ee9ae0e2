package org.restpoint.adapters.modbus;

import java.time.Duration;
import org.junit.jupiter.api.AfterEach;
import org.restpoint.adapters.link.DeviceContract;

/** What a Modbus probe keeps, whatever the wire: the device answers when the test has it answer. */
abstract class ModbusLinkContract extends DeviceContract {

  static final ModbusSettings PROBE = ModbusProbes.probe(5, 100, Duration.ofMinutes(5), 0);

  /** The far end of a wire that is not there. */
  static final DevicesOnWire NOTHING =
      new DevicesOnWire() {
        @Override
        public boolean answerOne() {
          return false;
        }

        @Override
        public void close() {}
      };

  final Devices devices = new Devices();

  /** The far end of the wire. */
  abstract DevicesOnWire farEnd();

  @Override
  protected void deliver(double millivolts) {
    devices.hold(5, 100, millivolts);
    farEnd().answerOne();
  }

  @Override
  protected void deliverBad() {
    devices.hold(5, 100, Double.NaN);
    farEnd().answerOne();
  }

  @AfterEach
  void switchOff() {
    farEnd().close();
  }
}
