package org.restpoint.adapters.link;

import java.time.Instant;
import java.util.Optional;
import org.restpoint.adapters.link.LinkHealth.Condition;

/** How a link is: noted by its threads, read by any. A closed link stays closed. */
public final class LinkState {

  private LinkHealth health = new LinkHealth(Condition.NEW, "", Optional.empty());

  /**
   * From new to opening.
   *
   * @param link what is started, for the error's text
   * @throws IllegalStateException when it was started or closed before
   */
  public synchronized void start(String link) {
    if (health.condition() != Condition.NEW) {
      throw new IllegalStateException(
          "the link to %s was started or closed before".formatted(link));
    }
    become(Condition.OPENING, "");
  }

  /**
   * The link is so from now on; a last arrival is kept.
   *
   * @return false when it is closed, and stays so
   */
  public synchronized boolean become(Condition condition, String detail) {
    if (health.condition() == Condition.CLOSED) {
      return false;
    }
    health = new LinkHealth(condition, detail, health.lastArrival());
    return true;
  }

  /** The link is so from now on, and a trouble says why. */
  public boolean become(Condition condition, LinkTrouble why) {
    return become(condition, why.sentences());
  }

  /** Something has arrived: the link reads. */
  public synchronized void arrived(Instant time) {
    if (become(Condition.READING, "")) {
      health = new LinkHealth(Condition.READING, "", Optional.of(time));
    }
  }

  /** How it is now. */
  public synchronized LinkHealth health() {
    return health;
  }

  /** What it is doing now. */
  public Condition condition() {
    return health().condition();
  }
}
