package org.restpoint.acquisition.service;

import org.restpoint.acquisition.station.StationTerms;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;
import org.restpoint.adapters.serial.PortSettings;
import org.restpoint.config.station.Numbers;
import org.restpoint.config.station.PotentialNumber;
import org.restpoint.config.station.SerialPort;
import org.restpoint.config.station.TemperatureNumber;

/** Says to a link what the station file says of its device: the port, and what numbers it sends. */
final class DeviceWiring {

  private DeviceWiring() {}

  static PortSettings port(SerialPort port) {
    return new PortSettings(
        port.name(),
        port.baud(),
        port.dataBits(),
        switch (port.parity()) {
          case NONE -> PortSettings.Parity.NONE;
          case EVEN -> PortSettings.Parity.EVEN;
          case ODD -> PortSettings.Parity.ODD;
          case MARK -> PortSettings.Parity.MARK;
          case SPACE -> PortSettings.Parity.SPACE;
        },
        port.stopBits() == 2 ? PortSettings.StopBits.TWO : PortSettings.StopBits.ONE,
        switch (port.handshake()) {
          case NONE -> PortSettings.Handshake.NONE;
          case RTS_CTS -> PortSettings.Handshake.REQUEST_TO_SEND;
          case XON_XOFF -> PortSettings.Handshake.XON_XOFF;
        },
        port.dtr(),
        port.rts());
  }

  static Meaning meaning(Numbers numbers) {
    return new Meaning(
        numbers.potential().map(DeviceWiring::potential),
        numbers.temperature().map(DeviceWiring::temperature));
  }

  private static PotentialScale potential(PotentialNumber number) {
    if (number instanceof PotentialNumber.Counts counts) {
      return PotentialScale.counts(counts.millivoltsPerCount(), counts.offsetMillivolts());
    }
    if (number instanceof PotentialNumber.Volts) {
      return PotentialScale.VOLTS;
    }
    return number instanceof PotentialNumber.Microvolts
        ? PotentialScale.MICROVOLTS
        : PotentialScale.MILLIVOLTS;
  }

  private static TemperatureScale temperature(TemperatureNumber number) {
    if (number instanceof TemperatureNumber.Ohms ohms) {
      return new TemperatureScale.Ohms(StationTerms.thermometer(ohms.thermometer()));
    }
    if (number instanceof TemperatureNumber.Kelvin) {
      return TemperatureScale.KELVIN;
    }
    return number instanceof TemperatureNumber.Fahrenheit
        ? TemperatureScale.FAHRENHEIT
        : TemperatureScale.CELSIUS;
  }
}
