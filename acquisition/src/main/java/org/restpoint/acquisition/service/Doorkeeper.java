package org.restpoint.acquisition.service;

import java.util.concurrent.atomic.AtomicBoolean;
import org.restpoint.adapters.mqtt.BrokerListener;
import org.restpoint.adapters.mqtt.BrokerTrouble;

/**
 * Lets the publisher begin, and with it say that the service is there, once the inbox listens or
 * has found that it cannot. So whoever hears that the service is there may tell it something: an
 * instruction that nobody has subscribed to yet would be lost.
 */
final class Doorkeeper implements BrokerListener {

  private final BrokerListener listener;
  private final Runnable open;
  private final AtomicBoolean opened = new AtomicBoolean();

  /** Passes on to a listener what the inbox reports, and opens after its first report. */
  Doorkeeper(BrokerListener listener, Runnable open) {
    this.listener = listener;
    this.open = open;
  }

  @Override
  public void connected() {
    listener.connected();
    open();
  }

  @Override
  public void disconnected(BrokerTrouble trouble) {
    listener.disconnected(trouble);
    open();
  }

  @Override
  public void trouble(BrokerTrouble trouble) {
    listener.trouble(trouble);
    open();
  }

  private void open() {
    if (opened.compareAndSet(false, true)) {
      open.run();
    }
  }
}
