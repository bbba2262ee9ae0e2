package org.restpoint.acquisition.listen;

import org.restpoint.adapters.serial.PortSettings;
import org.restpoint.adapters.serial.PortSettings.Handshake;
import org.restpoint.adapters.serial.PortSettings.Parity;
import org.restpoint.adapters.serial.PortSettings.StopBits;

/**
 * The speed of a port and how it frames a character.
 *
 * @param baud bits a second
 * @param dataBits 7 or 8
 * @param parity the parity bit
 */
public record Setting(int baud, int dataBits, Parity parity) {

  /** How a port is opened with it: one stop bit, no handshake, DTR and RTS raised. */
  public PortSettings of(String port) {
    return new PortSettings(port, baud, dataBits, parity, StopBits.ONE, Handshake.NONE, true, true);
  }

  /** As it is customarily written: {@code 9600 baud, 8N1}. */
  public String text() {
    return "%d baud, %d%s1".formatted(baud, dataBits, parity.name().charAt(0));
  }
}
