package org.restpoint.acquisition.service;

import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.mqtt.MqttReadings;
import org.restpoint.adapters.simulated.SimulatedLink;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.Probe;

/** Makes the link that a probe's settings ask for. */
final class LinkWiring {

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
      return mqtt.link(MqttWiring.settings(topic, probe.name()), listener);
    }
    if (settings instanceof LinkSettings.Recording recording) {
      return RecordingWiring.link(
          recording, probe.name(), listener, surroundings.clock(), surroundings.nanos());
    }
    return new SimulatedLink(
        SimulationTerms.settings(
            (LinkSettings.Simulated) settings, probe, surroundings.simulationSpeed()),
        listener,
        surroundings.clock(),
        surroundings.nanos());
  }
}
