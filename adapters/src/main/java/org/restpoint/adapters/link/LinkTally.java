package org.restpoint.adapters.link;

/** Counts what a link sees; safe to read from any thread while the link counts. */
public final class LinkTally {

  private long accepted;
  private long rejected;
  private long dropped;

  /** Counts a reading that was offered to the hand-over. */
  public synchronized void offered(boolean taken) {
    if (taken) {
      accepted++;
    } else {
      dropped++;
    }
  }

  /** Counts an arrival that is not a reading. */
  public synchronized void rejected() {
    rejected++;
  }

  /** All counts at one moment. */
  public synchronized LinkCounts counts() {
    return new LinkCounts(accepted + rejected + dropped, accepted, rejected, dropped);
  }
}
