package org.restpoint.acquisition.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.adapters.sdi12.SimulatedConverter;
import picocli.CommandLine;

/** Who is on an SDI-12 bus, and giving a sensor another address: at a real terminal. */
@EnabledOnOs(OS.LINUX)
@Timeout(120)
class AddressCommandTest {

  @TempDir private Path folder;

  /** What a command came to. */
  private record Said(int exitStatus, String out, String err) {}

  private Said address(String options) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine line = Commands.line().setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
    String[] words = ("address " + folder.resolve("port") + " " + options).strip().split(" +");
    return new Said(line.execute(words), out.toString(), err.toString());
  }

  @Test
  void theOnlySensorIsFoundAndGivenAnotherAddress() throws Exception {
    try (SimulatedConverter converter = new SimulatedConverter(folder.resolve("port"))) {
      converter.sensor('0', 1);
      converter.plug();
      assertThat(address(""))
          .isEqualTo(new Said(0, "sensor 0: INVENTED ION-2 1.0, SDI-12 version 1.4\n", ""));
      assertThat(address("--from 0 --to 3 --yes"))
          .isEqualTo(
              new Said(
                  0, "sensor 0 is now sensor 3: INVENTED ION-2 1.0, SDI-12 version 1.4\n", ""));
      assertThat(converter.commands()).contains("0A3!");
      assertThat(address("--from 0 --to 4 --yes"))
          .isEqualTo(
              new Said(
                  5,
                  "",
                  "restpoint: no sensor answers at 0; nothing was changed. Look at its wires, its"
                      + " 12 V supply and --baud\n"));
    }
  }

  @Test
  void anAddressThatIsTakenIsNotGiven() throws Exception {
    try (SimulatedConverter converter = new SimulatedConverter(folder.resolve("port"))) {
      converter.sensor('0', 1);
      converter.sensor('3', 1);
      converter.plug();
      assertThat(address("--from 0 --to 3 --yes"))
          .isEqualTo(
              new Said(5, "", "restpoint: a sensor answers at 3 already; nothing was changed\n"));
      assertThat(converter.commands()).containsExactly("0!", "3!");
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--from 0 | --from and --to go together: which address the sensor has, and which it is to"
            + " have",
        "--from 0 --to 0 --yes | --from and --to are the same address",
        "--from 0 --to % --yes | --to is 0 to 9, A to Z or a to z, not %",
        "--baud 0 | --baud is above 0, not 0",
        "--from 0 --to 3 | a sensor keeps its new address without power, and every station file"
            + " that names it must be changed: add --yes if sensor 0 is to become 3"
      })
  void whatWasNotMeantIsRefusedBeforeThePortIsOpened(String options, String why) {
    assertThat(address(options)).isEqualTo(new Said(2, "", "restpoint: " + why + "\n"));
  }

  @Test
  void anAbsentPortIsToldAsByTheService() {
    assertThat(address(""))
        .isEqualTo(
            new Said(
                4,
                "",
                "restpoint: serial port "
                    + folder.resolve("port")
                    + " is absent. Plug the meter in, or look which ports there are with: restpoint"
                    + " ports\n"));
  }
}
