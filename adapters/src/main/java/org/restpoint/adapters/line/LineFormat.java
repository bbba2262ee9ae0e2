package org.restpoint.adapters.line;

/**
 * How bytes become lines, before anybody asks what they say.
 *
 * @param end where a line ends
 * @param encoding how its characters are written
 * @param checksum how it proves that it came whole
 */
public record LineFormat(LineEnd end, LineEncoding encoding, LineChecksum checksum) {

  /** Ended by CR, LF or both, a byte a character, without a checksum. */
  public static final LineFormat PLAIN =
      new LineFormat(LineEnd.CR_OR_LF, LineEncoding.LATIN_1, LineChecksum.NONE);
}
