package org.restpoint.adapters.serial;

/**
 * How a serial port is opened. Refuses, with an {@link IllegalArgumentException}, an empty name, a
 * speed that is not above zero and other than 7 or 8 data bits.
 *
 * @param port the device's path, or its bare name under {@code /dev}; a symbolic link is followed
 *     anew on each attempt to open it
 * @param baud bits per second
 * @param dataBits 7 or 8
 * @param parity the parity bit
 * @param stopBits the stop bits
 * @param handshake who may hold up whom
 * @param dtr whether data terminal ready is raised; many opto-isolated converters feed on it
 * @param rts whether request to send is raised; without meaning with {@link
 *     Handshake#REQUEST_TO_SEND}, which uses it
 */
public record PortSettings(
    String port,
    int baud,
    int dataBits,
    Parity parity,
    StopBits stopBits,
    Handshake handshake,
    boolean dtr,
    boolean rts) {

  /** The parity bit. */
  public enum Parity {
    /** No such bit. */
    NONE,
    /** The ones are even in number with it. */
    EVEN,
    /** The ones are odd in number with it. */
    ODD,
    /** It is always one. */
    MARK,
    /** It is always zero. */
    SPACE
  }

  /** How long the line rests after a character. */
  public enum StopBits {
    /** One bit. */
    ONE,
    /** Two bits. */
    TWO
  }

  /** Who may hold up whom. */
  public enum Handshake {
    /** Nobody. */
    NONE,
    /** By the lines request to send and clear to send. */
    REQUEST_TO_SEND,
    /** By the characters XON and XOFF. */
    XON_XOFF
  }

  public PortSettings {
    if (port.isBlank()) {
      throw new IllegalArgumentException("the serial port has no name");
    }
    if (baud <= 0) {
      throw new IllegalArgumentException("the speed %d baud is not above zero".formatted(baud));
    }
    if (dataBits != 7 && dataBits != 8) {
      throw new IllegalArgumentException("7 or 8 data bits, not " + dataBits);
    }
  }

  /** 8 data bits, no parity, 1 stop bit, no handshake, DTR and RTS raised. */
  public static PortSettings plain(String port, int baud) {
    return new PortSettings(port, baud, 8, Parity.NONE, StopBits.ONE, Handshake.NONE, true, true);
  }
}
