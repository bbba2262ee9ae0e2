package org.restpoint.config.file;

import java.util.Optional;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.LinkSettings.Modbus;
import org.restpoint.config.station.LinkSettings.Mqtt;
import org.restpoint.config.station.LinkSettings.Recording;
import org.restpoint.config.station.LinkSettings.Sdi12;
import org.restpoint.config.station.LinkSettings.Serial;
import org.restpoint.config.station.MqttPayload;

/** Whether a link's readings carry a temperature. */
final class CarriedTemperature {

  private static final String OTHERWISE = ", or give the temperature by fixed or probe";

  private CarriedTemperature() {}

  /**
   * Why readings carry no temperature.
   *
   * @param found what the link is
   * @param remedy what to do about it
   */
  record Lack(String found, String remedy) {}

  /** What a link lacks to carry temperatures; empty where it carries them. */
  static Optional<Lack> lack(LinkSettings link) {
    if (link instanceof Serial serial && serial.numbers().temperature().isEmpty()) {
      return lack(
          "a serial line pattern without the group celsius",
          "put (?<celsius>[-+.\\d]+) where the line shows it");
    }
    if (link instanceof Recording recording
        && recording.layout().filter(l -> l.numbers().temperature().isEmpty()).isPresent()) {
      return lack(
          "a recording without a column of temperatures", "name it under columns, e.g. celsius: T");
    }
    if (link instanceof Modbus modbus && modbus.temperature().isEmpty()) {
      return lack(
          "modbus registers without celsius", "add celsius: and the register that holds it");
    }
    if (link instanceof Sdi12 sensor && sensor.numbers().temperature().isEmpty()) {
      return lack("an sdi12 sensor without celsius", "add celsius: and which of its values it is");
    }
    if (link instanceof Mqtt mqtt) {
      if (mqtt.payload() instanceof MqttPayload.BareNumber) {
        return lack("payload: number, which carries none", "send JSON and point to celsius in it");
      }
      if (mqtt.payload() instanceof MqttPayload.Json json
          && json.places().temperature().isEmpty()) {
        return lack("mqtt messages without celsius", "add celsius: and a pointer like /celsius");
      }
      if (mqtt.payload() instanceof MqttPayload.SenMl senml
          && senml.places().temperature().isEmpty()) {
        return lack("SenML packs without celsius", "add celsius: and the name of its records");
      }
    }
    return Optional.empty();
  }

  private static Optional<Lack> lack(String found, String remedy) {
    return Optional.of(new Lack(found, remedy + OTHERWISE));
  }
}
