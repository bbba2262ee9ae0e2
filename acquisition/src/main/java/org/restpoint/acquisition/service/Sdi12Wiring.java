package org.restpoint.acquisition.service;

import java.util.HashMap;
import java.util.Map;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.sdi12.Measurement;
import org.restpoint.adapters.sdi12.Sdi12Bus;
import org.restpoint.adapters.sdi12.Sdi12Settings;
import org.restpoint.adapters.sdi12.SensorAddress;
import org.restpoint.adapters.serial.SerialWireSource;
import org.restpoint.config.station.LinkSettings.Sdi12;

/**
 * Makes the links of SDI-12 sensors. Probes that name one port are on one bus; that they agree on
 * the port was checked with the station file.
 */
final class Sdi12Wiring {

  private final Surroundings surroundings;
  private final Map<String, Sdi12Bus> buses = new HashMap<>();

  Sdi12Wiring(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  Link link(Sdi12 settings, LinkListener listener) {
    Sdi12Bus bus = buses.computeIfAbsent(settings.port().name(), port -> bus(settings));
    return bus.link(
        new Sdi12Settings(
            new SensorAddress(settings.address()),
            new Measurement(
                switch (settings.command().kind()) {
                  case ALONE -> Measurement.Kind.ALONE;
                  case CONCURRENT -> Measurement.Kind.CONCURRENT;
                  case CONTINUOUS -> Measurement.Kind.CONTINUOUS;
                },
                settings.command().number(),
                settings.checked()),
            DeviceWiring.meaning(settings.numbers()),
            settings.potentialPlace(),
            settings.temperaturePlace(),
            settings.every(),
            settings.answerWithin(),
            settings.retries(),
            settings.noDataAfter()),
        listener);
  }

  private Sdi12Bus bus(Sdi12 settings) {
    return new Sdi12Bus(
        new SerialWireSource(DeviceWiring.port(settings.port()), surroundings.privateFolder()),
        surroundings.clock(),
        surroundings.nanos());
  }
}
