package org.restpoint.adapters.bus;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.jna.LastErrorException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.link.DeviceContract;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.serial.PortSettings;
import org.restpoint.adapters.serial.PseudoTerminal;
import org.restpoint.adapters.serial.SerialWireSource;

/** The same over a real terminal. */
@EnabledOnOs(OS.LINUX)
class SerialWireLinkContractTest extends DeviceContract {

  /** EIO: what a terminal's other end says while nobody has it open. */
  private static final int INPUT_OUTPUT_ERROR = 5;

  @TempDir private Path folder;
  private PseudoTerminal device = new PseudoTerminal();
  private boolean plugged = true;

  @Override
  protected Link createLink(LinkListener listener) throws Exception {
    device.linkedAs(folder.resolve("converter"));
    SerialWireSource port =
        new SerialWireSource(
            PortSettings.plain(folder.resolve("converter").toString(), 9600),
            folder.resolve("native"));
    return new Bus(port, InstantSource.system())
        .link(
            new PollSettings(
                "the made-up probe", Duration.ofMillis(1), Duration.ofMinutes(5), "Look at it"),
            new LineExchange("?", Duration.ofMinutes(5)),
            listener);
  }

  @Override
  protected void deliver(double millivolts) {
    answer(Double.toString(millivolts));
  }

  @Override
  protected void deliverBad() {
    answer("over");
  }

  private void answer(String line) {
    try {
      if (plugged && !device.receive(100).isEmpty()) {
        device.send(line + "\n");
      }
    } catch (LastErrorException nobodyHasItOpen) {
      assertThat(nobodyHasItOpen.getErrorCode()).isEqualTo(INPUT_OUTPUT_ERROR);
    }
  }

  @Override
  protected void takeAway() {
    plugged = false;
    device.close();
  }

  @Override
  protected void bringBack() throws Exception {
    device = new PseudoTerminal();
    device.linkedAs(folder.resolve("converter"));
    plugged = true;
  }

  @AfterEach
  void unplug() {
    device.close();
  }
}
