package org.restpoint.acquisition.service;

import java.util.HashMap;
import java.util.Map;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.modbus.ModbusBus;
import org.restpoint.adapters.modbus.ModbusSettings;
import org.restpoint.adapters.modbus.NumberType;
import org.restpoint.adapters.modbus.Register;
import org.restpoint.adapters.modbus.RegisterTable;
import org.restpoint.adapters.wire.TcpAddress;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.ModbusConnection;
import org.restpoint.config.station.ModbusRegister;

/**
 * Makes the links to Modbus devices: those on one port or at one address share a bus. A bus opens
 * with the first of its links and ends with the last.
 */
final class ModbusWiring {

  private final Surroundings surroundings;
  private final Map<ModbusConnection, ModbusBus> buses = new HashMap<>();

  ModbusWiring(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  Link link(LinkSettings.Modbus device, LinkListener listener) {
    return buses
        .computeIfAbsent(device.bus(), this::bus)
        .link(
            new ModbusSettings(
                device.unit(),
                device.potential().map(ModbusWiring::register),
                device.temperature().map(ModbusWiring::register),
                DeviceWiring.meaning(device.numbers()),
                device.every(),
                device.answerWithin(),
                device.retries(),
                device.noDataAfter()),
            listener);
  }

  private ModbusBus bus(ModbusConnection connection) {
    if (connection instanceof ModbusConnection.Line line) {
      return ModbusBus.rtu(
          DeviceWiring.port(line.port()),
          surroundings.privateFolder(),
          surroundings.clock(),
          surroundings.nanos());
    }
    ModbusConnection.Network network = (ModbusConnection.Network) connection;
    return ModbusBus.tcp(
        new TcpAddress(network.host(), network.port()), surroundings.clock(), surroundings.nanos());
  }

  private static Register register(ModbusRegister register) {
    return new Register(
        switch (register.table()) {
          case INPUT -> RegisterTable.INPUT;
          case HOLDING -> RegisterTable.HOLDING;
        },
        register.address(),
        switch (register.type()) {
          case INT16 -> NumberType.INT16;
          case UINT16 -> NumberType.UINT16;
          case INT32 -> NumberType.INT32;
          case UINT32 -> NumberType.UINT32;
          case FLOAT32 -> NumberType.FLOAT32;
          case FLOAT64 -> NumberType.FLOAT64;
        },
        register.words() == ModbusRegister.Order.BIG
            ? Register.WordOrder.BIG
            : Register.WordOrder.LITTLE,
        register.bytes() == ModbusRegister.Order.LITTLE,
        register.scale(),
        register.offset(),
        register.missing());
  }
}
