package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import org.eclipse.paho.client.mqttv3.IMqttActionListener;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.jspecify.annotations.Nullable;

/** What the broker answers to one request; awaited by the client's own thread. */
final class Answer implements IMqttActionListener {

  private final Doorbell doorbell;
  private final LongSupplier nanos;
  private volatile int @Nullable [] granted;
  private volatile @Nullable Throwable failure;
  private volatile boolean given;

  Answer(Doorbell doorbell, LongSupplier nanos) {
    this.doorbell = doorbell;
    this.nanos = nanos;
  }

  @Override
  public void onSuccess(IMqttToken token) {
    granted = token.getGrantedQos();
    given = true;
    doorbell.ring();
  }

  @Override
  public void onFailure(IMqttToken token, Throwable thrown) {
    granted = token.getGrantedQos();
    failure = thrown == null ? new IllegalStateException("no reason given") : thrown;
    given = true;
    doorbell.ring();
  }

  /** Waits for the answer; false when there was none in time or the wait was given up. */
  boolean await(Duration limit, BooleanSupplier givenUp) {
    long began = nanos.getAsLong();
    while (!given && !givenUp.getAsBoolean()) {
      long left = limit.toNanos() - (nanos.getAsLong() - began);
      if (left <= 0 || Thread.currentThread().isInterrupted()) {
        return false;
      }
      doorbell.await(Duration.ofNanos(left));
    }
    return given;
  }

  /** What went wrong; null when nothing did, or no answer has come yet. */
  @Nullable Throwable failure() {
    return failure;
  }

  /** The quality of service granted for a topic of a subscription; 128 is a refusal. */
  int granted(int index) {
    int[] all = granted;
    return all == null || index >= all.length ? 0 : all[index];
  }
}
