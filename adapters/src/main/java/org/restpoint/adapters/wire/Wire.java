package org.restpoint.adapters.wire;

/**
 * An open connection to a device or a bus. For one thread, but {@link #close()} may come from any
 * and ends a read or write under way.
 */
public interface Wire extends AutoCloseable {

  /**
   * Waits a moment, a tenth of a second at most, for bytes.
   *
   * @param into where they are put, from the first
   * @return how many came; 0 when none came in time; below zero when the device is gone
   */
  int read(byte[] into);

  /**
   * Sends bytes.
   *
   * @return false when the device is gone
   */
  boolean write(byte[] bytes);

  /** Forgets what has come and was not read: the late answer to an earlier question. */
  void discardInput();

  @Override
  void close();
}
