package org.restpoint.config.station;

/** What a Modbus device is joined to. */
public sealed interface ModbusConnection {

  /**
   * A serial line; Modbus RTU.
   *
   * @param port how its port is opened
   */
  record Line(SerialPort port) implements ModbusConnection {}

  /**
   * A network; Modbus TCP.
   *
   * @param host the name or address of the device or gateway; an IPv6 address without brackets
   * @param port its port
   */
  record Network(String host, int port) implements ModbusConnection {}
}
