package org.restpoint.config.file;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.ModbusConnection;
import org.restpoint.config.station.SerialPort;

/** What Modbus probes on one serial port keep to: they agree on how it is opened. */
final class ModbusSharing {

  private static final Map<String, Function<SerialPort, Object>> AGREED = new LinkedHashMap<>();

  static {
    AGREED.put("baud", SerialPort::baud);
    AGREED.put("parity", SerialPort::parity);
    AGREED.put("stop-bits", SerialPort::stopBits);
    AGREED.put("dtr", SerialPort::dtr);
    AGREED.put("rts", SerialPort::rts);
  }

  private ModbusSharing() {}

  static void tell(PortUse newcomer, List<PortUse> earlier) {
    Optional<PortUse> owner = earlier.stream().filter(use -> port(use).isPresent()).findFirst();
    Optional<SerialPort> own = port(newcomer);
    if (owner.isPresent() && own.isPresent()) {
      SerialPort other = port(owner.get()).orElseThrow();
      AGREED.forEach(
          (key, said) -> {
            if (!said.apply(own.get()).equals(said.apply(other))) {
              SharedPorts.tellDifference(newcomer, owner.get(), key);
            }
          });
    }
  }

  private static Optional<SerialPort> port(PortUse use) {
    return use.link().orElse(null) instanceof LinkSettings.Modbus modbus
            && modbus.bus() instanceof ModbusConnection.Line line
        ? Optional.of(line.port())
        : Optional.empty();
  }
}
