package org.restpoint.config.station;

/**
 * How the bytes of a serial port become lines.
 *
 * @param end where a line ends
 * @param encoding how its characters are written
 * @param checksum how it proves that it came whole
 */
public record LineFormat(End end, Encoding encoding, Checksum checksum) {

  /** Where a line ends. */
  public sealed interface End {

    /** At CR, LF or both. */
    record CrOrLf() implements End {}

    /**
     * At a text of its own.
     *
     * @param text 1 to 8 ASCII characters
     */
    record Terminator(String text) implements End {}

    /**
     * After so many bytes.
     *
     * @param bytes 1 to 1024
     */
    record Width(int bytes) implements End {}
  }

  /** How characters are written. */
  public enum Encoding {
    /** ISO 8859-1, and so ASCII. */
    LATIN_1,
    /** UTF-8. */
    UTF_8,
    /** UTF-16, the low byte first. */
    UTF_16LE,
    /** UTF-16, the high byte first. */
    UTF_16BE
  }

  /** How a line proves that it came whole; cyclic redundancy checks by their catalogue names. */
  public enum Checksum {
    /** It does not. */
    NONE,
    /** An exclusive or behind the last star. */
    XOR,
    /** CRC-16/MODBUS. */
    CRC_16_MODBUS,
    /** CRC-16/ARC. */
    CRC_16_ARC,
    /** CRC-16/IBM-3740. */
    CRC_16_IBM_3740,
    /** CRC-16/XMODEM. */
    CRC_16_XMODEM,
    /** CRC-16/KERMIT. */
    CRC_16_KERMIT
  }
}
