package org.restpoint.adapters.modbus;

import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Locale;
import java.util.function.LongSupplier;
import org.restpoint.adapters.bus.Bus;
import org.restpoint.adapters.bus.PollSettings;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.serial.PortSettings;
import org.restpoint.adapters.serial.SerialWireSource;
import org.restpoint.adapters.wire.TcpAddress;
import org.restpoint.adapters.wire.TcpWireSource;
import org.restpoint.adapters.wire.WireSource;

/**
 * A serial line or a TCP connection with Modbus devices on it, each read in its turn. It opens
 * nothing before the first of its links is started, and is closed with the last.
 */
public final class ModbusBus {

  private final Bus bus;
  private final Conversation conversation;
  private final String where;
  private final String wiring;

  private ModbusBus(Bus bus, Conversation conversation, String where, String wiring) {
    this.bus = bus;
    this.conversation = conversation;
    this.where = where;
    this.wiring = wiring;
  }

  /**
   * A serial line; Modbus RTU.
   *
   * @param port which port and how it is opened
   * @param nativeFolder where the native serial library is unpacked, a folder that only this
   *     service's user can write to; made if absent
   * @param clock gives readings their time
   * @param nanos a monotonic clock in nanoseconds
   */
  public static ModbusBus rtu(
      PortSettings port, Path nativeFolder, InstantSource clock, LongSupplier nanos) {
    WireSource source = new SerialWireSource(port, nativeFolder);
    return new ModbusBus(
        new Bus(source, clock, nanos),
        Conversation.rtu(port.baud()),
        "on " + source.name(),
        "speed and parity (here: %d baud, parity %s), A and B of the wiring, and its termination"
            .formatted(port.baud(), port.parity().name().toLowerCase(Locale.ROOT)));
  }

  /**
   * A TCP connection; Modbus TCP.
   *
   * @param address the device's or the gateway's
   * @param clock gives readings their time
   * @param nanos a monotonic clock in nanoseconds
   */
  public static ModbusBus tcp(TcpAddress address, InstantSource clock, LongSupplier nanos) {
    return new ModbusBus(
        new Bus(new TcpWireSource(address), clock, nanos),
        Conversation.tcp(),
        "at " + address,
        "whether %s speaks Modbus TCP, and behind a gateway speed, parity and wiring there"
            .formatted(address));
  }

  /** Prepares the link of one probe. */
  public Link link(ModbusSettings settings, LinkListener listener) {
    return bus.link(
        new PollSettings(
            "Modbus unit %d %s".formatted(settings.unit(), where),
            settings.every(),
            settings.noDataAfter(),
            "Check that the device is on, its unit (here: %d), %s"
                .formatted(settings.unit(), wiring)),
        new ModbusExchange(conversation, settings, "Check " + wiring),
        listener);
  }
}
