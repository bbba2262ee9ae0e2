package org.restpoint.adapters.sdi12;

import java.time.InstantSource;
import java.util.HashMap;
import java.util.Map;
import java.util.function.LongSupplier;
import org.restpoint.adapters.bus.Bus;
import org.restpoint.adapters.bus.PollSettings;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.wire.WireSource;

/**
 * The sensors behind one converter. Its links are made before the first is started; when all of
 * them are closed the port is closed with them.
 *
 * <p>Probes that read the same measurement of the same sensor share it when they are asked within a
 * second; what it fails by is told to each of them.
 */
public final class Sdi12Bus {

  private static final String WHEN_SILENT =
      "Look at the sensor's three wires, its 12 V supply and its address, and whether the converter"
          + " takes plain commands at this speed";

  private final String wire;
  private final Bus bus;
  private final Map<SensorAddress, Sensor> sensors = new HashMap<>();

  /**
   * @param source where the converter's wire is had
   * @param clock gives readings their time
   * @param nanos a monotonic clock in nanoseconds
   */
  public Sdi12Bus(WireSource source, InstantSource clock, LongSupplier nanos) {
    this.wire = source.name();
    this.bus = new Bus(source, clock, nanos);
  }

  /**
   * Prepares the link of one probe; it opens nothing before its start.
   *
   * @param listener is told readings and troubles on the bus's thread
   */
  public Link link(Sdi12Settings settings, LinkListener listener) {
    Sensor sensor = sensors.computeIfAbsent(settings.address(), Sensor::new);
    return bus.link(
        new PollSettings(
            "SDI-12 sensor %s on %s".formatted(settings.address(), wire),
            settings.every(),
            settings.noDataAfter(),
            WHEN_SILENT),
        new SensorExchange(sensor, settings),
        listener);
  }
}
