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
import org.restpoint.adapters.link.CollectingListener;
import org.restpoint.adapters.link.DeviceContract;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.quantity.Meanings;

/** A link keeps its promises also where the lines of another channel come between its own. */
@EnabledOnOs(OS.LINUX)
class SharedSerialLinkContractTest extends DeviceContract {

  @TempDir private Path folder;
  private PseudoTerminal meter = new PseudoTerminal();
  private boolean plugged = true;
  private Optional<Link> neighbour = Optional.empty();

  @Override
  protected Link createLink(LinkListener listener) throws Exception {
    meter.linkedAs(folder.resolve("meter"));
    SerialLine line =
        new SerialLine(
            new SerialLineSettings(
                PortSettings.plain(folder.resolve("meter").toString(), 9600), LineFormat.PLAIN),
            folder.resolve("native"),
            InstantSource.system(),
            System::nanoTime);
    SerialLink second = line.link(channel("2"), new CollectingListener());
    neighbour = Optional.of(second);
    SerialLink first = line.link(channel("1"), listener);
    second.start();
    return first;
  }

  private static SerialSettings channel(String channel) {
    return new SerialSettings(
        Pattern.compile("(?<channel>\\d):(?<millivolts>\\S+) mV"),
        Meanings.MILLIVOLTS,
        DecimalMark.POINT,
        Optional.of(channel),
        Optional.empty(),
        Duration.ofSeconds(1),
        Duration.ofMinutes(5));
  }

  @Override
  protected void deliver(double millivolts) {
    if (plugged) {
      meter.send("2:" + -millivolts + " mV\r\n1:" + millivolts + " mV\r\n2:0 mV\r\n");
    }
  }

  @Override
  protected void deliverBad() {
    meter.send("2:1 mV\r\n1:over mV\r\n");
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
    neighbour.ifPresent(Link::close);
    meter.close();
  }
}
