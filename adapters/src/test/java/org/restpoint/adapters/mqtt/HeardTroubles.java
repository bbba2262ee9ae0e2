package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.fail;

import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** A listener that keeps what it is told, for tests; a connection is told as {@code connected}. */
final class HeardTroubles implements BrokerListener {

  private static final BrokerTrouble CONNECTED = new BrokerTrouble("connected", "", "");

  private final BlockingQueue<BrokerTrouble> told = new LinkedBlockingQueue<>();

  @Override
  public void connected() {
    told.add(CONNECTED);
  }

  @Override
  public void disconnected(BrokerTrouble trouble) {
    told.add(trouble);
  }

  @Override
  public void trouble(BrokerTrouble trouble) {
    told.add(trouble);
  }

  /** The next that was told; fails when nothing is. */
  BrokerTrouble next() {
    try {
      @Nullable BrokerTrouble next = told.poll(30, TimeUnit.SECONDS);
      return next == null ? fail("nothing was told") : next;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  /** The next of this kind; others before it are passed over. */
  BrokerTrouble next(String code) {
    BrokerTrouble next = next();
    while (!next.code().equals(code)) {
      next = next();
    }
    return next;
  }
}
