package org.restpoint.acquisition.service;

import java.util.concurrent.BlockingQueue;
import java.util.concurrent.atomic.AtomicInteger;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.stability.reading.Reading;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Between one link and the engine: bounded for each link, so that one that floods cannot push out
 * the readings of another.
 */
final class HandOver implements LinkListener {

  /** Over an hour of readings at one a second, or some seconds of a flood. */
  static final int MOST_WAITING = 4096;

  private static final Logger LOG = LoggerFactory.getLogger(HandOver.class);

  private final String probe;
  private final BlockingQueue<Input> inputs;
  private final AtomicInteger waiting = new AtomicInteger();

  HandOver(String probe, BlockingQueue<Input> inputs) {
    this.probe = probe;
    this.inputs = inputs;
  }

  @Override
  public boolean reading(Reading reading) {
    if (waiting.incrementAndGet() > MOST_WAITING) {
      waiting.decrementAndGet();
      return false;
    }
    return inputs.add(new Input.FromLink(this, probe, reading));
  }

  @Override
  public void trouble(LinkTrouble trouble) {
    if (waiting.incrementAndGet() > MOST_WAITING) {
      waiting.decrementAndGet();
      LOG.warn("{}: {}, which the journal does not keep: too much waits", probe, trouble.text());
    } else {
      inputs.add(new Input.Trouble(this, probe, trouble));
    }
  }

  /** The engine has taken one. */
  void taken() {
    waiting.decrementAndGet();
  }
}
