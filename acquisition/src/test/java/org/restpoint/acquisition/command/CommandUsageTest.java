package org.restpoint.acquisition.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.restpoint.acquisition.command.Said.run;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Wrong usage says what is wrong and how it is used; help stands everywhere. */
class CommandUsageTest {

  @TempDir private Path folder;

  private static void assertUsage(Said said, String firstLine, String usage) {
    said.isUsage(firstLine, usage);
  }

  @Test
  void wrongUsageShowsHowItIsUsed() {
    assertUsage(run(), "Missing required subcommand", "Usage: restpoint [-hV] [COMMAND]");
    assertUsage(run("x"), "Unmatched argument at index 0: 'x'", "Usage: restpoint [-hV] [COMMAND]");
    assertUsage(
        run("run"), "Missing required parameter: 'STATION'", "Usage: restpoint run [-hV] STATION");
    assertUsage(
        run("tell", "station.yaml", "no3-a", "measure", "sample"),
        "Unmatched argument at index 4: 'sample'",
        "Usage: restpoint tell [-hV] [--wait] [--within=SECONDS] STATION PROBE");
    assertUsage(
        run("records", "station.yaml", "--as", "xml"),
        "Invalid value for option '--as': expected one of [csv, jsonl, senml, geojson, text] (case-sensitive) but was"
            + " 'xml'",
        "Usage: restpoint records [-hV] [--latest] [--as=<as>] [--from=TIME] [--of=<of>]");
  }

  @Test
  void aTimeAndAZoneAreSaidAsTheyAreExpected() {
    String usage =
        "Usage: restpoint records [-hV] [--latest] [--as=<as>] [--from=TIME] [--of=<of>]";
    assertUsage(
        run("records", "station.yaml", "--from", "monday"),
        "Invalid value for option '--from': expected a time by ISO 8601 in UTC, like"
            + " 2026-04-02T14:03:00Z; found monday",
        usage);
    assertUsage(
        run("records", "station.yaml", "--of", "summary", "--zone", "Mars"),
        "Invalid value for option '--zone': expected a time zone, like America/Chicago or -05:00;"
            + " found Mars",
        usage);
  }

  @Test
  void listeningToNothingOrToTwoThingsOrSendingWhileTrying() {
    String usage = "Usage: restpoint listen [-hV] [--try] [--ask=TEXT] [--baud=N] [--broker=URL]";
    assertUsage(run("listen"), "expected a PORT, or --topic and --broker", usage);
    assertUsage(
        run("listen", "/dev/ttyUSB0", "--topic", "a"),
        "expected a PORT, or --topic and --broker",
        usage);
    assertUsage(
        run("listen", "/dev/ttyUSB0", "--try", "--ask", "R"),
        "--try sends nothing: find the speed first, then --ask with --baud",
        usage);
    assertUsage(
        run("listen", "--topic", "a", "--ask", "R"),
        "--try and --ask are for a port, not for a topic",
        usage);
    assertUsage(
        run("listen", "/dev/ttyUSB0", "--for", "20"),
        "Invalid value for option '--for': expected a time like 20s, 500ms or 2min; found 20",
        usage);
    assertUsage(
        run("listen", "/dev/ttyUSB0", "--parity", "both"),
        "Invalid value for option '--parity': expected none, even, odd, mark or space; found both",
        usage);
    assertUsage(
        run("listen", "--topic", "a", "--broker", "http://x"),
        "--broker: broker url: expected tcp://host:port, found http://x",
        usage);
  }

  @Test
  void listeningToAPortThatIsNotThere() {
    Path absent = folder.resolve("ttyUSB7");
    run("listen", absent)
        .isRefusal(
            4,
            ("serial port %s is absent. Plug the meter in, or look which ports there are with:"
                    + " restpoint ports")
                .formatted(absent));
  }

  @Test
  void thePortsAreFollowedByWhatToDoNext() {
    Said said = run("ports");

    assertThat(said.exitStatus()).isZero();
    assertThat(said.err())
        .contains(said.out().isEmpty() ? "Plug the meter" : "restpoint listen /dev/");
  }

  @Test
  void helpStandsEverywhere() {
    for (String command : Commands.line().getSubcommands().keySet()) {
      Said said = run(command, "--help");
      assertThat(said.exitStatus()).isZero();
      assertThat(said.out()).startsWith("Usage: restpoint " + command);
      assertThat(said.err()).isEmpty();
    }
  }
}
