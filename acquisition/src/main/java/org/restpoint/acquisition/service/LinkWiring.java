package org.restpoint.acquisition.service;

import org.restpoint.acquisition.station.StationTerms;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.mqtt.MqttLinkSettings;
import org.restpoint.adapters.mqtt.MqttReadingFormat;
import org.restpoint.adapters.mqtt.MqttReadings;
import org.restpoint.adapters.recording.RecordingLink;
import org.restpoint.adapters.recording.RecordingSettings;
import org.restpoint.adapters.simulated.Beaker;
import org.restpoint.adapters.simulated.ElectrodeTraits;
import org.restpoint.adapters.simulated.SimulatedLink;
import org.restpoint.adapters.simulated.SimulatedSettings;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.Probe;

/** Makes the link that a probe's settings ask for. */
final class LinkWiring {

  /** What a bench meter commonly shows: 0.01 mV and 0.1 °C. */
  private static final int MILLIVOLT_DECIMALS = 2;

  private static final int CELSIUS_DECIMALS = 1;

  private final Surroundings surroundings;
  private final MqttReadings mqtt;
  private final ModbusWiring modbus;
  private final SerialWiring serialLines;
  private final Sdi12Wiring sensors;

  LinkWiring(Surroundings surroundings, MqttReadings mqtt) {
    this.surroundings = surroundings;
    this.mqtt = mqtt;
    this.modbus = new ModbusWiring(surroundings);
    this.serialLines = new SerialWiring(surroundings);
    this.sensors = new Sdi12Wiring(surroundings);
  }

  Link link(Probe probe, LinkListener listener) {
    LinkSettings settings = probe.link();
    if (settings instanceof LinkSettings.Serial serial) {
      return serialLines.link(serial, listener);
    }
    if (settings instanceof LinkSettings.Sdi12 sensor) {
      return sensors.link(sensor, listener);
    }
    if (settings instanceof LinkSettings.Modbus device) {
      return modbus.link(device, listener);
    }
    if (settings instanceof LinkSettings.Mqtt topic) {
      return mqtt.link(
          new MqttLinkSettings(topic.topic(), format(topic.payload()), topic.noDataAfter()),
          listener);
    }
    if (settings instanceof LinkSettings.Recording recording) {
      return new RecordingLink(
          new RecordingSettings(recording.file(), probe.name()),
          listener,
          surroundings.clock(),
          surroundings.nanos());
    }
    return simulated((LinkSettings.Simulated) settings, probe, listener);
  }

  private Link simulated(LinkSettings.Simulated settings, Probe probe, LinkListener listener) {
    Electrode electrode = probe.electrode().orElseThrow();
    return new SimulatedLink(
        new SimulatedSettings(
            new ElectrodeTraits(
                settings.slopePercent(),
                settings.offsetMillivolts(),
                StationTerms.analyte(electrode).charge(),
                settings.timeConstant(),
                settings.noiseMillivolts(),
                settings.creepMillivoltsPerHour(),
                settings.seed(),
                MILLIVOLT_DECIMALS,
                CELSIUS_DECIMALS),
            new Beaker(
                StationTerms.molesPerLitre(settings.solution(), electrode), settings.celsius()),
            settings.interval(),
            surroundings.simulationSpeed()),
        listener,
        surroundings.clock(),
        surroundings.nanos());
  }

  private static MqttReadingFormat format(LinkSettings.MqttPayload payload) {
    if (payload instanceof LinkSettings.MqttPayload.Json json) {
      return new MqttReadingFormat.JsonFields(json.millivolts(), json.celsius());
    }
    return new MqttReadingFormat.BareNumber();
  }
}
