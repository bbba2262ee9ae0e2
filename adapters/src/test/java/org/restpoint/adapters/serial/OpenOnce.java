package org.restpoint.adapters.serial;

import java.nio.file.Path;
import org.restpoint.adapters.link.LinkTrouble;

/** A program of its own that tries to open a serial port and prints what came of it. */
final class OpenOnce {

  private OpenOnce() {}

  /**
   * Tries once.
   *
   * @param args the port and the folder for the native library
   */
  public static void main(String[] args) {
    SerialDevice.Attempt attempt =
        SerialDevice.open(PortSettings.plain(args[0], 9600), Path.of(args[1]));
    if (attempt instanceof SerialDevice.Attempt.Opened opened) {
      opened.device().close();
      System.out.println("opened");
    } else if (attempt instanceof SerialDevice.Attempt.Refused refused) {
      LinkTrouble trouble = refused.failure().trouble(args[0]);
      System.out.println(trouble.code());
      System.out.println(trouble.text());
      System.out.println(trouble.remedy());
    }
  }
}
