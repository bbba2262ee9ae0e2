package org.restpoint.adapters.checksum;

import java.util.Objects;

/**
 * A cyclic redundancy check of 16 bits: the remainder of the message, followed by 16 zero bits,
 * divided by {@code x¹⁶ + polynomial} over GF(2), begun with {@code initial}; nothing is added at
 * the end.
 *
 * <p>The name says which: devices and their manuals write "CRC-16" and "CCITT" for several. The
 * remainder of no bytes is {@code initial}. A remainder is 0 to 0xFFFF; in which order its two
 * bytes are sent is the protocol's affair.
 *
 * <p>Reference: G. Cook, Catalogue of parametrised CRC algorithms with 16 bits,
 * https://reveng.sourceforge.io/crc-catalogue/16.htm, whose names these are.
 *
 * <p>Refuses, with an {@link IllegalArgumentException}, a polynomial and an initial value of more
 * than 16 bits.
 *
 * @param name as in the catalogue
 * @param polynomial the divisor's lower 16 bits, highest power first
 * @param initial what the register holds before the first byte, highest power first; symmetric in
 *     every case named here, so that the order of its bits makes no difference
 * @param reflected whether bytes come lowest bit first and the remainder is read so
 */
public record Crc16(String name, int polynomial, int initial, boolean reflected) {

  /** That of Modbus RTU frames. */
  public static final Crc16 MODBUS = new Crc16("CRC-16/MODBUS", 0x8005, 0xFFFF, true);

  /** The one that is mostly meant by "CRC-16" alone; that of SDI-12 as well. */
  public static final Crc16 ARC = new Crc16("CRC-16/ARC", 0x8005, 0x0000, true);

  /** Often called CCITT with 0xFFFF, or CCITT-FALSE. */
  public static final Crc16 IBM_3740 = new Crc16("CRC-16/IBM-3740", 0x1021, 0xFFFF, false);

  /** Often called CCITT with 0. */
  public static final Crc16 XMODEM = new Crc16("CRC-16/XMODEM", 0x1021, 0x0000, false);

  /** CCITT as its recommendation has it: lowest bit first. */
  public static final Crc16 KERMIT = new Crc16("CRC-16/KERMIT", 0x1021, 0x0000, true);

  private static final int SIXTEEN_BITS = 0xFFFF;
  private static final int HIGHEST_BIT = 0x8000;

  public Crc16 {
    if ((polynomial & ~SIXTEEN_BITS) != 0 || (initial & ~SIXTEEN_BITS) != 0) {
      throw new IllegalArgumentException(
          "polynomial %#x and initial value %#x have 16 bits at most"
              .formatted(polynomial, initial));
    }
  }

  /** The remainder of all the bytes, 0 to 0xFFFF. */
  public int of(byte[] bytes) {
    return of(bytes, 0, bytes.length);
  }

  /**
   * The remainder of the bytes from one place up to, but without, another; 0 to 0xFFFF.
   *
   * @throws IndexOutOfBoundsException when they do not lie in the array
   */
  public int of(byte[] bytes, int from, int to) {
    Objects.checkFromToIndex(from, to, bytes.length);
    return reflected ? lowestBitFirst(bytes, from, to) : highestBitFirst(bytes, from, to);
  }

  private int highestBitFirst(byte[] bytes, int from, int to) {
    int register = initial;
    for (int i = from; i < to; i++) {
      register ^= (bytes[i] & 0xFF) << 8;
      for (int bit = 0; bit < Byte.SIZE; bit++) {
        boolean divides = (register & HIGHEST_BIT) != 0;
        register = (register << 1) & SIXTEEN_BITS;
        register ^= divides ? polynomial : 0;
      }
    }
    return register;
  }

  private int lowestBitFirst(byte[] bytes, int from, int to) {
    int divisor = turned(polynomial);
    int register = turned(initial);
    for (int i = from; i < to; i++) {
      register ^= bytes[i] & 0xFF;
      for (int bit = 0; bit < Byte.SIZE; bit++) {
        boolean divides = (register & 1) != 0;
        register >>>= 1;
        register ^= divides ? divisor : 0;
      }
    }
    return register;
  }

  private static int turned(int sixteenBits) {
    return Integer.reverse(sixteenBits) >>> Short.SIZE;
  }
}
