package org.restpoint.adapters.link;

/**
 * What a link has seen since it was started: {@code received = accepted + rejected + dropped}.
 *
 * @param received lines, messages or rows that arrived
 * @param accepted readings handed over
 * @param rejected arrivals that are not a reading: malformed, out of range, wrong checksum
 * @param dropped readings that found the hand-over full
 */
public record LinkCounts(long received, long accepted, long rejected, long dropped) {

  public LinkCounts {
    if (accepted < 0 || rejected < 0 || dropped < 0 || received != accepted + rejected + dropped) {
      throw new IllegalArgumentException(
          "received %d is not accepted %d + rejected %d + dropped %d"
              .formatted(received, accepted, rejected, dropped));
    }
  }
}
