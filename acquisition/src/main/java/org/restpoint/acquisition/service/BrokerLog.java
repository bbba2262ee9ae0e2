package org.restpoint.acquisition.service;

import org.restpoint.adapters.mqtt.BrokerListener;
import org.restpoint.adapters.mqtt.BrokerTrouble;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Writes into the log how the broker comes and goes. The connections of a service share one, so
 * what all of them find is said once.
 */
final class BrokerLog implements BrokerListener {

  private static final Logger LOG = LoggerFactory.getLogger(BrokerLog.class);
  private static final String THERE = "the broker is there";

  private String said = "";

  @Override
  public synchronized void connected() {
    if (isNew(THERE)) {
      LOG.info(THERE);
    }
  }

  @Override
  public void disconnected(BrokerTrouble trouble) {
    trouble(trouble);
  }

  @Override
  public synchronized void trouble(BrokerTrouble trouble) {
    String words = trouble.text() + ". " + trouble.remedy();
    if (isNew(words)) {
      LOG.warn("{}", words);
    }
  }

  private boolean isNew(String words) {
    boolean isNew = !words.equals(said);
    said = words;
    return isNew;
  }
}
