package org.restpoint.acquisition.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.restpoint.acquisition.service.PrivateFolder;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.serial.PortSettings;
import org.restpoint.adapters.serial.SerialPortEntry;
import org.restpoint.adapters.serial.SerialPorts;
import org.restpoint.adapters.serial.SerialWireSource;
import org.restpoint.adapters.wire.WireSource.Attempt;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

@Command(
    name = "ports",
    description = {
      "Lists the serial ports of this machine with what the system knows of each.",
      "Opens none of them unless --free is given."
    })
final class PortsCommand implements Callable<Integer> {

  private static final int ANY_BAUD = 9600;

  @Option(
      names = "--free",
      description =
          "also say whether each is free, by opening it for a moment: some devices restart at that")
  private boolean free;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws IOException {
    List<SerialPortEntry> ports = SerialPorts.list(PrivateFolder.path());
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    if (ports.isEmpty()) {
      err.println("No serial port is there. Plug the meter or its converter in and look again.");
    }
    for (SerialPortEntry port : ports) {
      tell(port, out);
    }
    out.flush();
    ports.stream()
        .findFirst()
        .ifPresent(
            port ->
                err.println(
                    "To see what a meter sends: restpoint listen "
                        + SerialPorts.stableName(port.path())));
    return ExitStatus.DONE;
  }

  private void tell(SerialPortEntry port, PrintWriter out) {
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
    SerialPorts.notPermitted(port.path())
        .map(LinkTrouble::sentences)
        .or(() -> free ? Optional.of(state(port.path())) : Optional.empty())
        .ifPresent(state -> out.println("    " + state));
  }

  private static String state(String path) {
    Attempt attempt =
        new SerialWireSource(PortSettings.plain(path, ANY_BAUD), PrivateFolder.path())
            .open(() -> {});
    if (attempt instanceof Attempt.Opened opened) {
      opened.wire().close();
      return "free";
    }
    return ((Attempt.Refused) attempt).trouble().sentences();
  }
}
