package org.restpoint.acquisition.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import org.restpoint.acquisition.service.PrivateFolder;
import org.restpoint.adapters.serial.SerialPortEntry;
import org.restpoint.adapters.serial.SerialPorts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

@Command(
    name = "ports",
    description = "Lists the serial ports of this machine with what the system knows of each.")
final class PortsCommand implements Callable<Integer> {

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws IOException {
    List<SerialPortEntry> ports = SerialPorts.list(PrivateFolder.path());
    PrintWriter out = spec.commandLine().getOut();
    if (ports.isEmpty()) {
      spec.commandLine()
          .getErr()
          .println("No serial port is there. Plug the meter or its converter in and look again.");
    }
    for (SerialPortEntry port : ports) {
      out.println(port.path() + "  " + port.description());
      port.usb()
          .ifPresent(
              usb ->
                  out.println(
                      "    USB "
                          + usb.ids()
                          + usb.serialNumber()
                              .map(number -> ", serial number " + number)
                              .orElse("")));
      port.manufacturer().ifPresent(maker -> out.println("    made by " + maker));
      port.stableNames().forEach(name -> out.println("    also " + name));
    }
    out.flush();
    return ExitStatus.DONE;
  }
}
