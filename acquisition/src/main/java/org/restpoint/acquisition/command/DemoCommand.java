package org.restpoint.acquisition.command;

import java.io.PrintWriter;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.concurrent.Callable;
import org.restpoint.acquisition.demo.Demo;
import org.restpoint.acquisition.demo.DemoException;
import org.restpoint.acquisition.demo.Shell;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

@Command(
    name = "demo",
    description =
        "Shows the main job with nothing installed: broker and bench are simulated, a "
            + "soil sample and a tile-water sample are read. Takes about a quarter of a minute "
            + "and leaves its journal.")
final class DemoCommand implements Callable<Integer> {

  /** The half-hour lies in the past, so that whoever goes on with the station is not early. */
  private static final Duration BEFORE_NOW = Duration.ofHours(1);

  private static final int HIGHEST_PORT = 65_535;

  /** Beyond it, readings outrun the embedded broker on a machine that is busy with other things. */
  private static final int HIGHEST_SPEED = 300;

  @Option(
      names = "--folder",
      paramLabel = "DIR",
      description = "where station file and journal are left (default: ${DEFAULT-VALUE})")
  private Path folder = Path.of("restpoint-demo");

  @Option(
      names = "--port",
      paramLabel = "PORT",
      description = "where the broker listens on 127.0.0.1; 0 for a free port (the default)")
  private int port;

  @Option(
      names = "--speed",
      paramLabel = "TIMES",
      description =
          "how many times as fast as at a real bench, 1 to 300 (default: ${DEFAULT-VALUE})")
  private int speed = 150;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws InterruptedException {
    requireBetween("--port", 0, HIGHEST_PORT, port);
    requireBetween("--speed", 1, HIGHEST_SPEED, speed);
    Demo demo =
        new Demo(
            folder,
            port,
            speed,
            InstantSource.system().instant().minus(BEFORE_NOW).truncatedTo(ChronoUnit.SECONDS));
    try {
      boolean good = demo.play(program(), new PrintWriter(StandardOutput.buffered(), true));
      return good ? ExitStatus.DONE : ExitStatus.BAD_OUTCOME;
    } catch (DemoException e) {
      throw new CommandException(
          e.begun() ? ExitStatus.BAD_OUTCOME : ExitStatus.NOT_STARTED,
          String.valueOf(e.getMessage()));
    }
  }

  private void requireBetween(String option, int low, int high, int found) {
    if (found < low || found > high) {
      throw new ParameterException(
          spec.commandLine(),
          "%s: expected %d to %d; found %d".formatted(option, low, high, found));
    }
  }

  /** How this program was called, from the folder it was called in. */
  private static String program() {
    Path code = Path.of("restpoint.jar");
    try {
      Path place =
          Path.of(DemoCommand.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      Path here = Path.of("").toAbsolutePath();
      if (place.toString().endsWith(".jar")) {
        code = place.startsWith(here) ? here.relativize(place) : place;
      }
    } catch (URISyntaxException e) {
      // Then the program's usual name has to do.
    }
    return "java -jar " + Shell.quoted(code.toString());
  }
}
