package org.restpoint.adapters.mqtt;

import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.eclipse.paho.client.mqttv3.IMqttActionListener;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.jspecify.annotations.Nullable;

/**
 * The numbers of the messages that the broker has acknowledged on one connection, in the order in
 * which it did. At most as many as may be under way.
 */
final class Acknowledgements implements IMqttActionListener {

  private final Queue<Long> sequences = new ConcurrentLinkedQueue<>();
  private final Doorbell doorbell;

  Acknowledgements(Doorbell doorbell) {
    this.doorbell = doorbell;
  }

  /** The next number; null when there is none now. */
  @Nullable Long next() {
    return sequences.poll();
  }

  @Override
  public void onSuccess(IMqttToken token) {
    if (token.getUserContext() instanceof Long sequence) {
      sequences.add(sequence);
      doorbell.ring();
    }
  }

  /** The connection has ended; whoever waits looks at it. */
  @Override
  public void onFailure(IMqttToken token, Throwable thrown) {
    doorbell.ring();
  }
}
