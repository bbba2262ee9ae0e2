package org.restpoint.config.station;

/**
 * How a serial port is opened.
 *
 * @param name the device's path or name
 * @param baud bits per second
 * @param dataBits 7 or 8
 * @param parity the parity bit
 * @param stopBits 1 or 2
 * @param handshake who may hold up whom
 * @param dtr whether data terminal ready is raised
 * @param rts whether request to send is raised
 */
public record SerialPort(
    String name,
    int baud,
    int dataBits,
    Parity parity,
    int stopBits,
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

  /** Who may hold up whom. */
  public enum Handshake {
    /** Nobody. */
    NONE,
    /** By the lines request to send and clear to send. */
    RTS_CTS,
    /** By the characters XON and XOFF. */
    XON_XOFF
  }
}
