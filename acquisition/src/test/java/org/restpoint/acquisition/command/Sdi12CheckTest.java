package org.restpoint.acquisition.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

/** What is understood of SDI-12 sensors is said back. */
class Sdi12CheckTest {

  @Test
  void eachSensorIsSaidBackWithItsCommand() {
    StringWriter out = new StringWriter();
    int status =
        Commands.line()
            .setOut(new PrintWriter(out))
            .execute("check", "../adapters/examples/sdi12.yaml");

    assertThat(status).isZero();
    assertThat(out.toString().lines().filter(line -> line.startsWith("probe ")))
        .containsExactly(
            "probe     nitrate-well: SDI-12 sensor 0 on serial port"
                + " /dev/serial/by-id/usb-converter-if00-port0, 9600 baud, asked C with checksum"
                + " every 15 s",
            "probe     chloride-well: SDI-12 sensor 0 on serial port"
                + " /dev/serial/by-id/usb-converter-if00-port0, 9600 baud, asked C with checksum"
                + " every 15 s",
            "probe     ammonium-well: SDI-12 sensor b on serial port"
                + " /dev/serial/by-id/usb-converter-if00-port0, 9600 baud, asked R0 every 5 s");
  }
}
