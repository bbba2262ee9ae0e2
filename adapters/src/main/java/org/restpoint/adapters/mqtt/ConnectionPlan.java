package org.restpoint.adapters.mqtt;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;

/**
 * What a client asks of each of its connections.
 *
 * @param clientId its name at the broker; letters, digits, hyphens, at most 65,535 bytes
 * @param clean whether the broker forgets the session with the connection
 * @param acknowledgesByHand whether an inbound message is acknowledged only on demand
 * @param presence the will, if it has one
 * @param mostInFlight messages that the client may have under way, of any quality of service
 */
record ConnectionPlan(
    String clientId,
    boolean clean,
    boolean acknowledgesByHand,
    Optional<Presence> presence,
    int mostInFlight) {

  /** The same for the MQTT library, without address, user and socket. */
  MqttConnectOptions options(ConnectionTimes times) {
    MqttConnectOptions options = new MqttConnectOptions();
    options.setMqttVersion(MqttConnectOptions.MQTT_VERSION_3_1_1);
    options.setAutomaticReconnect(false);
    options.setCleanSession(clean);
    options.setKeepAliveInterval((int) times.keepAlive().toSeconds());
    options.setConnectionTimeout((int) Math.max(1, times.connect().toSeconds()));
    options.setMaxInflight(mostInFlight);
    presence.ifPresent(
        will ->
            options.setWill(will.topic(), will.gone().getBytes(StandardCharsets.UTF_8), 1, true));
    return options;
  }
}
