package org.restpoint.acquisition.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.restpoint.acquisition.probe.Words;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.ModbusConnection;
import org.restpoint.config.station.ModbusRegister;
import org.restpoint.config.station.PotentialNumber;
import org.restpoint.config.station.SerialPort;
import org.restpoint.config.station.TemperatureNumber;

/** Says back what a Modbus link was understood to mean. */
final class ModbusAccount {

  private ModbusAccount() {}

  static String of(LinkSettings.Modbus modbus) {
    List<String> numbers = new ArrayList<>();
    modbus
        .potential()
        .ifPresent(
            register ->
                numbers.add(
                    modbus.numbers().potential().map(PotentialNumber::key).orElse("")
                        + " from "
                        + register(register)));
    modbus
        .temperature()
        .ifPresent(
            register ->
                numbers.add(
                    modbus.numbers().temperature().map(TemperatureNumber::key).orElse("")
                        + " from "
                        + register(register)));
    return "Modbus unit %d %s, asked every %s, %s"
        .formatted(
            modbus.unit(),
            bus(modbus.bus()),
            Words.span(modbus.every()),
            String.join(", ", numbers));
  }

  private static String bus(ModbusConnection bus) {
    if (bus instanceof ModbusConnection.Line line) {
      SerialPort port = line.port();
      return "on serial port %s, %d baud, parity %s"
          .formatted(port.name(), port.baud(), lower(port.parity()));
    }
    ModbusConnection.Network network = (ModbusConnection.Network) bus;
    String host = network.host();
    return "at %s:%d".formatted(host.contains(":") ? "[" + host + "]" : host, network.port());
  }

  private static String register(ModbusRegister register) {
    return "%s register %d (%s)"
        .formatted(lower(register.table()), register.address(), lower(register.type()));
  }

  private static String lower(Enum<?> word) {
    return word.name().toLowerCase(Locale.ROOT);
  }
}
