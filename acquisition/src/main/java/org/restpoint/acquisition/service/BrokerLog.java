package org.restpoint.acquisition.service;

import org.restpoint.adapters.mqtt.BrokerListener;
import org.restpoint.adapters.mqtt.BrokerTrouble;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Writes into the log how the broker comes and goes. */
final class BrokerLog implements BrokerListener {

  private static final Logger LOG = LoggerFactory.getLogger(BrokerLog.class);

  @Override
  public void connected() {
    LOG.info("the broker is there");
  }

  @Override
  public void disconnected(BrokerTrouble trouble) {
    LOG.warn("{}. {}", trouble.text(), trouble.remedy());
  }

  @Override
  public void trouble(BrokerTrouble trouble) {
    LOG.warn("{}. {}", trouble.text(), trouble.remedy());
  }
}
