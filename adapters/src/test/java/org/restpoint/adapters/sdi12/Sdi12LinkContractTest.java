package org.restpoint.adapters.sdi12;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.jna.LastErrorException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.link.DeviceContract;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.sdi12.Measurement.Kind;
import org.restpoint.adapters.serial.PortSettings;
import org.restpoint.adapters.serial.PseudoTerminal;
import org.restpoint.adapters.serial.SerialWireSource;

/** A sensor's probe keeps the promises of every link, over a real terminal. */
@EnabledOnOs(OS.LINUX)
class Sdi12LinkContractTest extends DeviceContract {

  /** EIO: what a terminal's other end says while nobody has it open. */
  private static final int INPUT_OUTPUT_ERROR = 5;

  private static final Duration LONG = Duration.ofMinutes(5);

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
    return new Sdi12Bus(port, InstantSource.system(), System::nanoTime)
        .link(
            new Sdi12Settings(
                new SensorAddress('0'),
                new Measurement(Kind.CONTINUOUS, 0, true),
                new Meaning(Optional.of(PotentialScale.MILLIVOLTS), Optional.empty()),
                OptionalInt.of(1),
                OptionalInt.empty(),
                Duration.ofMillis(1),
                LONG,
                0,
                LONG),
            listener);
  }

  @Override
  protected void deliver(double millivolts) {
    answer(String.format(Locale.ROOT, "0%+.2f", millivolts));
  }

  @Override
  protected void deliverBad() {
    answer("0+99999.9");
  }

  private void answer(String line) {
    try {
      if (plugged && device.receive(100).endsWith("0RC0!")) {
        device.send(line + CheckCharacters.of(line) + "\r\n");
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
