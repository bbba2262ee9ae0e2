package org.restpoint.adapters.simulated;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.stability.reading.Reading;

/** A listener that keeps what it hears; it takes readings up to a number and then is full. */
final class Heard implements LinkListener {

  private static final long PATIENCE_SECONDS = 30;

  final BlockingQueue<Reading> readings;
  final BlockingQueue<LinkTrouble> troubles = new LinkedBlockingQueue<>();

  Heard(int room) {
    this.readings = new LinkedBlockingQueue<>(room);
  }

  @Override
  public boolean reading(Reading reading) {
    return readings.offer(reading);
  }

  @Override
  public void trouble(LinkTrouble trouble) {
    troubles.add(trouble);
  }

  /** The next readings, waited for. */
  List<Reading> next(int count) throws InterruptedException {
    List<Reading> next = new ArrayList<>();
    while (next.size() < count) {
      Reading reading = readings.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
      if (reading == null) {
        throw new AssertionError("heard %d of %d readings".formatted(next.size(), count));
      }
      next.add(reading);
    }
    return next;
  }

  /** The next trouble, waited for. */
  LinkTrouble trouble() throws InterruptedException {
    LinkTrouble trouble = troubles.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
    if (trouble == null) {
      throw new AssertionError("heard of no trouble");
    }
    return trouble;
  }
}
