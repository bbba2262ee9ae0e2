package org.restpoint.acquisition.service;

import org.restpoint.adapters.mqtt.MqttLinkSettings;
import org.restpoint.adapters.mqtt.MqttReadingFormat;
import org.restpoint.adapters.mqtt.TimeField;
import org.restpoint.adapters.mqtt.TopicFilter;
import org.restpoint.adapters.mqtt.Wanted;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.MqttPayload;
import org.restpoint.config.station.MqttPayload.Places;

/** Says to a link what the station file says of a topic and its messages. */
final class MqttWiring {

  private MqttWiring() {}

  static MqttLinkSettings settings(LinkSettings.Mqtt mqtt, String probe) {
    return new MqttLinkSettings(
        new TopicFilter(mqtt.topic()),
        mqtt.captured().orElse(probe),
        format(mqtt.payload()),
        mqtt.times().within(),
        mqtt.noDataAfter());
  }

  private static MqttReadingFormat format(MqttPayload payload) {
    if (payload instanceof MqttPayload.Json json) {
      return new MqttReadingFormat.JsonFields(
          wanted(json.places()), json.time().map(MqttWiring::time));
    }
    if (payload instanceof MqttPayload.SenMl senml) {
      return new MqttReadingFormat.SenMlRecords(wanted(senml.places()));
    }
    return new MqttReadingFormat.BareNumber();
  }

  private static Wanted wanted(Places places) {
    return new Wanted(
        DeviceWiring.meaning(places.numbers()), places.potential(), places.temperature());
  }

  private static TimeField time(MqttPayload.Time time) {
    return new TimeField(
        time.pointer(),
        time.inMilliseconds() ? TimeField.Unit.MILLISECONDS : TimeField.Unit.SECONDS);
  }
}
