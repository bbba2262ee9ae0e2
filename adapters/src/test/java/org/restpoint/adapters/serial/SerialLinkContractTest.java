package org.restpoint.adapters.serial;

import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.line.DecimalMark;
import org.restpoint.adapters.line.LineFormat;
import org.restpoint.adapters.link.DeviceContract;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.quantity.Meanings;

@EnabledOnOs(OS.LINUX)
class SerialLinkContractTest extends DeviceContract {

  @TempDir private Path folder;
  private PseudoTerminal meter = new PseudoTerminal();
  private boolean plugged = true;

  @Override
  protected Link createLink(LinkListener listener) throws Exception {
    meter.linkedAs(folder.resolve("meter"));
    return new SerialLine(
            new SerialLineSettings(
                PortSettings.plain(folder.resolve("meter").toString(), 9600), LineFormat.PLAIN),
            folder.resolve("native"),
            InstantSource.system(),
            System::nanoTime)
        .link(
            new SerialSettings(
                Pattern.compile("E=(?<millivolts>[-+.\\d]+) mV"),
                Meanings.MILLIVOLTS,
                DecimalMark.POINT,
                Optional.empty(),
                Optional.empty(),
                Duration.ofSeconds(1),
                Duration.ofMinutes(5)),
            listener);
  }

  @Override
  protected void deliver(double millivolts) {
    if (plugged) {
      meter.send("E=" + millivolts + " mV\r\n");
    }
  }

  @Override
  protected void deliverBad() {
    meter.send("E=over mV\r\n");
  }

  @Override
  protected void takeAway() {
    plugged = false;
    meter.close();
  }

  @Override
  protected void bringBack() throws Exception {
    meter = new PseudoTerminal();
    meter.linkedAs(folder.resolve("meter"));
    plugged = true;
  }

  @AfterEach
  void unplug() {
    meter.close();
  }
}
