package org.restpoint.adapters.modbus;

import com.sun.jna.LastErrorException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HexFormat;
import org.restpoint.adapters.serial.PseudoTerminal;

/** Made-up devices on a serial line that is a real terminal. Closing it is pulling the plug. */
public final class DevicesOnLine implements DevicesOnWire {

  private static final int ASK_BYTES = 8;

  private final PseudoTerminal terminal = new PseudoTerminal();
  private final Devices devices;
  private byte[] heard = {};

  /**
   * @param link the name under which the line is there
   */
  public DevicesOnLine(Devices devices, Path link) throws IOException {
    this.devices = devices;
    terminal.linkedAs(link);
  }

  @Override
  public boolean answerOne() {
    if (heard.length < ASK_BYTES) {
      byte[] more = received();
      int before = heard.length;
      heard = Arrays.copyOf(heard, before + more.length);
      System.arraycopy(more, 0, heard, before, more.length);
    }
    if (heard.length < ASK_BYTES) {
      return false;
    }
    byte[] ask = Arrays.copyOf(heard, ASK_BYTES);
    heard = Arrays.copyOfRange(heard, ASK_BYTES, heard.length);
    int unit = ask[0] & 0xFF;
    byte[] pdu = Arrays.copyOfRange(ask, 1, ASK_BYTES - 2);
    if (!Arrays.equals(ask, RtuFraming.frame(unit, pdu))) {
      throw new AssertionError("no sound question: " + HexFormat.of().formatHex(ask));
    }
    send(devices.answer(unit, pdu, answer -> RtuFraming.frame(unit, answer)));
    return true;
  }

  private byte[] received() {
    try {
      return terminal.receive(POLL_MILLIS).getBytes(StandardCharsets.ISO_8859_1);
    } catch (LastErrorException nobodyHasItOpen) {
      return new byte[0];
    }
  }

  /** Sends bytes that nobody has asked for. */
  public void send(byte[] bytes) {
    terminal.send(new String(bytes, StandardCharsets.ISO_8859_1));
  }

  @Override
  public void close() {
    terminal.close();
  }
}
