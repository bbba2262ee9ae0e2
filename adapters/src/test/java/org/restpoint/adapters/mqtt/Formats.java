package org.restpoint.adapters.mqtt;

import java.util.Optional;
import org.restpoint.adapters.mqtt.MqttReadingFormat.JsonFields;
import org.restpoint.adapters.mqtt.MqttReadingFormat.SenMlRecords;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.Meanings;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;

/** How the devices of the tests write their messages. */
final class Formats {

  private Formats() {}

  /** A potential in mV and a temperature in °C. */
  static Wanted both(String millivolts, String celsius) {
    return new Wanted(
        Meanings.MILLIVOLTS_AND_CELSIUS, Optional.of(millivolts), Optional.of(celsius));
  }

  static Wanted millivolts(String where) {
    return new Wanted(Meanings.MILLIVOLTS, Optional.of(where), Optional.empty());
  }

  static Wanted celsius(String where) {
    return new Wanted(Meanings.CELSIUS, Optional.empty(), Optional.of(where));
  }

  static Wanted scaled(
      PotentialScale potential, String where, TemperatureScale temperature, String there) {
    return new Wanted(
        new Meaning(Optional.of(potential), Optional.of(temperature)),
        Optional.of(where),
        Optional.of(there));
  }

  static MqttReadingFormat json(Wanted wanted) {
    return new JsonFields(wanted, Optional.empty());
  }

  /** With a time as text or in seconds. */
  static MqttReadingFormat json(Wanted wanted, String time) {
    return new JsonFields(wanted, Optional.of(new TimeField(time, TimeField.Unit.SECONDS)));
  }

  static MqttReadingFormat senml(Wanted wanted) {
    return new SenMlRecords(wanted);
  }
}
