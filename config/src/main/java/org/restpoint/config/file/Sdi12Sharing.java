package org.restpoint.config.file;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.restpoint.config.station.LinkSettings.Sdi12;
import org.restpoint.config.station.SerialPort;

/** What probes on one SDI-12 converter keep to: they agree on how its port is opened. */
final class Sdi12Sharing {

  private static final Map<String, Function<SerialPort, Object>> AGREED = agreed();

  private Sdi12Sharing() {}

  private static Map<String, Function<SerialPort, Object>> agreed() {
    Map<String, Function<SerialPort, Object>> keys = new LinkedHashMap<>();
    keys.put("baud", SerialPort::baud);
    keys.put("data-bits", SerialPort::dataBits);
    keys.put("parity", SerialPort::parity);
    keys.put("stop-bits", SerialPort::stopBits);
    keys.put("handshake", SerialPort::handshake);
    keys.put("dtr", SerialPort::dtr);
    keys.put("rts", SerialPort::rts);
    return keys;
  }

  static void tell(PortUse newcomer, List<PortUse> earlier) {
    earlier.stream()
        .filter(use -> use.link().isPresent())
        .findFirst()
        .ifPresent(owner -> tell(newcomer, owner));
  }

  private static void tell(PortUse newcomer, PortUse owner) {
    if (newcomer.link().orElse(null) instanceof Sdi12 one
        && owner.link().orElse(null) instanceof Sdi12 other) {
      AGREED.forEach(
          (key, said) -> {
            if (!said.apply(one.port()).equals(said.apply(other.port()))) {
              SharedPorts.tellDifference(newcomer, owner, key);
            }
          });
    }
  }
}
