package org.restpoint.adapters.recording;

/**
 * What was read so far: {@code rows = accepted + rejected}. The header and empty lines are not
 * rows.
 *
 * @param accepted rows that are readings
 * @param rejected rows that are not; each was told by its line
 */
public record RecordingCounts(long accepted, long rejected) {

  /** All rows. */
  public long rows() {
    return accepted + rejected;
  }
}
