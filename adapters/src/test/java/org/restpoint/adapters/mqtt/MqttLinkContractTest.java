package org.restpoint.adapters.mqtt;

import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.broker.Mosquitto;
import org.restpoint.adapters.link.DeviceContract;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;

/** A device at a real broker; it goes with the broker, which is killed, and comes with it. */
class MqttLinkContractTest extends DeviceContract {

  private static final String TOPIC = "bench/no3-a";

  private final Mosquitto broker;
  private final MqttReadings readings;
  private @Nullable Subscriber device;

  MqttLinkContractTest(@TempDir Path folder) {
    broker = Mosquitto.open(folder).start();
    readings =
        new MqttReadings(
            BrokerAddress.anonymous(broker.url()),
            "restpoint-bench-readings",
            OutboxPublisherTest.quick(),
            InstantSource.system(),
            System::nanoTime);
    device = Subscriber.connect(broker.url(), "device");
  }

  @Override
  protected Link createLink(LinkListener listener) {
    return readings.link(
        MqttLinkSettings.of(TOPIC, new MqttReadingFormat.BareNumber(), Duration.ofMinutes(5)),
        listener);
  }

  @Override
  protected void deliver(double millivolts) {
    publish(Double.toString(millivolts));
  }

  @Override
  protected void deliverBad() {
    publish("over");
  }

  private void publish(String payload) {
    if (device != null) {
      device.publish(TOPIC, payload, 1, false);
    }
  }

  @Override
  protected void takeAway() {
    leave();
    broker.kill();
  }

  @Override
  protected void bringBack() {
    broker.start();
    device = Subscriber.connect(broker.url(), "device");
  }

  private void leave() {
    if (device != null) {
      device.close();
      device = null;
    }
  }

  @AfterEach
  void endAll() {
    readings.close();
    leave();
    broker.close();
  }
}
