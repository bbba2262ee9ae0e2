package org.restpoint.adapters.link;

/**
 * A way in: something that delivers readings of one probe on a thread of its own.
 *
 * <p>Constructing opens nothing. {@link #start()} returns at once: an absent device never stops a
 * start, the link goes on trying and says so in {@link #check()} and to its {@link LinkListener}.
 * {@link #close()} is idempotent and bounded (2 s).
 */
public interface Link extends AutoCloseable {

  /** Begins to read. Called once. */
  void start();

  /** How the link is now. Never blocks. */
  LinkHealth check();

  /** What has come so far; the counts obey {@code received = accepted + rejected + dropped}. */
  LinkCounts counts();

  @Override
  void close();
}
